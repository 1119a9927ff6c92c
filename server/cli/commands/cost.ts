import { currencyDigits } from "#engine/currency.ts";
import type { OddPour } from "#engine/specs/glass-pours.ts";
import { type Report, section } from "#server/cli/output.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { withWorld } from "#server/cli/session.ts";
import { numberText } from "#server/cli/table.ts";
import { type CostAnswer, costFor } from "#server/reports/cost.ts";

export async function costCommand(options: CommonOptions & { drink?: string }) {
  return withWorld(options, async (world) =>
    costView(costFor(world, options), world.facts.catalogue.venue.currency),
  );
}

function costView(report: CostAnswer, currency: string): Report {
  const digits = currencyDigits(currency);
  const odd = report.drinks.flatMap(({ drink, oddPours }) => oddPours.map((pour) => ({ drink, ...pour })));
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
      ...(odd.length === 0 ? [] : [oddPoursSection(odd)]),
    ],
  };
}

function oddPoursSection(rows: ({ drink: string } & OddPour)[]) {
  return section({
    title: "By the glass: no lawful measure in the UK (Intoxicating Liquor Order 1988)",
    columns: [
      { head: "drink", cell: (row) => row.drink },
      { head: "item", cell: (row) => row.item },
      { head: "poured, ml", cell: (row) => row.ml, digits: 0 },
      { head: "as", cell: (row) => row.kind },
      { head: "lawful, ml", cell: (row) => row.lawfulMl.map((ml) => numberText(ml, 0)).join(" or ") },
    ],
    rows,
  });
}
