import { currencyDigits } from "#engine/currency.ts";
import { NO_ACCUSATION, type VarianceReport } from "#engine/variance/report.ts";
import { type Report, section } from "#server/cli/output.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { withWorld } from "#server/cli/session.ts";
import { numberText } from "#server/cli/table.ts";
import { varianceFor } from "#server/reports/variance.ts";

export async function varianceCommand(options: CommonOptions & { count?: string; since?: string }) {
  return withWorld(options, async (world) =>
    varianceView(await varianceFor(world, options), world.facts.catalogue.venue.currency),
  );
}

/** The variance as people read it: the ledger of each item, then causes, then what was not counted. */
export function varianceView(report: VarianceReport, currency: string): Report {
  const digits = currencyDigits(currency);
  const { totals } = report;
  return {
    json: report,
    head: [
      `Variance from "${report.opening}" (${report.from}) to "${report.closing}" (${report.to})`,
      `Drink used ${money(totals.usedCost, digits)} ${currency}, by the specs ${money(totals.expectedCost, digits)}; ` +
        `unexplained ${money(totals.unexplainedCost, digits)} ± ${money(totals.unexplainedCostSd, digits)}. ` +
        `Sales ${money(totals.sales, digits)}${totals.pourCostPct === null ? "" : `, cost ${numberText(totals.pourCostPct, 1)} % of them`}.`,
      NO_ACCUSATION,
    ],
    sections: [
      section({
        columns: [
          { head: "item", cell: (row) => row.item },
          { head: "unit", cell: (row) => row.base },
          { head: "opening", cell: (row) => row.openingQty, digits: 0 },
          {
            head: "in",
            cell: (row) => row.received + row.made + row.transferredIn - row.transferredOut,
            digits: 0,
          },
          { head: "closing", cell: (row) => row.closingQty, digits: 0 },
          { head: "used", cell: (row) => row.used, digits: 0 },
          { head: "expected", cell: (row) => row.expected, digits: 0 },
          { head: "losses", cell: (row) => row.losses, digits: 0 },
          { head: "unexplained", cell: (row) => row.unexplained, digits: 0 },
          { head: "±", cell: (row) => row.sd, digits: 0 },
          { head: currency, cell: (row) => row.cost, digits },
          {
            head: "verdict",
            cell: (row) => row.verdict,
            style: (row) => (row.verdict === "chase" ? "bold" : row.verdict === "quiet" ? "dim" : undefined),
          },
        ],
        rows: report.items,
        empty: "No item was counted whole in both counts.",
      }),
      section({
        title: "What may lie behind it",
        columns: [
          { head: "chance", cell: (row) => `${numberText(row.probability * 100, 0)} %` },
          { head: "kind", cell: (row) => row.kind },
          { head: "what", cell: (row) => (Array.isArray(row.what) ? row.what.join(" / ") : row.what) },
          { head: "size", cell: (row) => row.size, digits: 1 },
          { head: "unit", cell: (row) => row.unit },
          { head: "check", cell: (row) => row.check },
        ],
        rows: report.causes,
        empty: "Nothing stands out: what is left is within what counting and pouring can do.",
      }),
      ...notCountedSections(report),
    ],
  };
}

function notCountedSections({ notCounted, notCountedIn }: VarianceReport) {
  const rows = [
    ...notCounted.map((item) => ({ item, where: "anywhere" })),
    ...Object.entries(notCountedIn).map(([item, areas]) => ({ item, where: areas.join(", ") })),
  ];
  if (rows.length === 0) return [];
  return [
    section({
      title: "Not counted (not the same as none; left out above)",
      columns: [
        { head: "item", cell: (row) => row.item },
        { head: "not counted in", cell: (row) => row.where },
      ],
      rows,
    }),
  ];
}

function money(value: number | null, digits: number): string {
  return value === null ? "–" : numberText(value, digits);
}
