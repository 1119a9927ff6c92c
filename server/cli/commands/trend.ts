import { currencyDigits } from "#engine/currency.ts";
import { NO_ACCUSATION } from "#engine/variance/report.ts";
import type { TrendReport } from "#engine/variance/trend.ts";
import { type Report, section } from "#server/cli/output.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { withWorld } from "#server/cli/session.ts";
import { trendFor } from "#server/reports/trend.ts";

export async function trendCommand(options: CommonOptions & { item?: string }) {
  return withWorld(options, async (world) => {
    const report = await trendFor(world, options);
    const { currency } = world.facts.catalogue.venue;
    return options.item === undefined ? trendView(report, currency) : itemView(report);
  });
}

function trendView(report: TrendReport, currency: string): Report {
  return {
    json: report,
    head: [NO_ACCUSATION],
    sections: [
      section({
        title: "Items that drift: a small steady difference over the weeks",
        columns: [
          { head: "item", cell: (row) => row.item },
          { head: "since", cell: (row) => row.drift?.since },
          {
            head: "direction",
            cell: (row) =>
              row.drift?.direction === "missing" ? "more goes than is sold" : "less goes than is sold",
          },
          { head: "a period", cell: (row) => row.drift?.perPeriod, digits: 0 },
          { head: "unit", cell: (row) => row.base },
          { head: currency, cell: (row) => row.drift?.costPerPeriod, digits: currencyDigits(currency) },
          { head: "seen by", cell: (row) => row.drift?.charts.join(", ") },
        ],
        rows: report.items.filter(({ drift }) => drift !== null),
        empty: "No item drifts.",
      }),
    ],
  };
}

function itemView(report: TrendReport): Report {
  return {
    json: report,
    sections: report.items.map((item) =>
      section({
        title: `${item.item} (${item.base})`,
        columns: [
          { head: "to", cell: (row) => row.to },
          { head: "closing count", cell: (row) => row.closing },
          { head: "unexplained", cell: (row) => row.unexplained, digits: 0 },
          { head: "±", cell: (row) => row.sd, digits: 0 },
          { head: "ratio", cell: (row) => row.ratio, digits: 1 },
          { head: "EWMA", cell: (row) => row.ewma, digits: 2 },
          { head: "limit ±", cell: (row) => row.ewmaLimit, digits: 2 },
          { head: "CUSUM high", cell: (row) => row.cusumHigh, digits: 1 },
          { head: "CUSUM low", cell: (row) => row.cusumLow, digits: 1 },
        ],
        rows: item.points,
        empty: "It was not counted whole twice yet.",
      }),
    ),
  };
}
