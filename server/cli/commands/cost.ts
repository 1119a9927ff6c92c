import { currencyDigits } from "#engine/currency.ts";
import { type Report, section } from "#server/cli/output.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { withWorld } from "#server/cli/session.ts";
import { type CostAnswer, costFor } from "#server/reports/cost.ts";

export async function costCommand(options: CommonOptions & { drink?: string }) {
  return withWorld(options, async (world) =>
    costView(costFor(world, options), world.facts.catalogue.venue.currency),
  );
}

function costView(report: CostAnswer, currency: string): Report {
  const digits = currencyDigits(currency);
  return {
    json: report,
    sections: [
      section({
        columns: [
          { head: "drink", cell: (row) => row.drink },
          { head: "spec from", cell: (row) => row.from },
          { head: `cost ${currency}`, cell: (row) => row.cost, digits },
          { head: `price ${currency}`, cell: (row) => row.price, digits },
          { head: "cost %", cell: (row) => row.costPct, digits: 1 },
          { head: `contribution ${currency}`, cell: (row) => row.contribution, digits },
          { head: "no price for", cell: (row) => row.unpriced.join(", ") },
        ],
        rows: report.drinks,
        empty: "No drink has a spec yet.",
      }),
      section({
        title: "Items",
        columns: [
          { head: "item", cell: (row) => row.item },
          { head: `cost ${currency}`, cell: (row) => row.costPerBase, digits: 4 },
          { head: "per", cell: (row) => row.base },
        ],
        rows: report.items,
      }),
    ],
  };
}
