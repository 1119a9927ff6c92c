import { writeFileSync } from "node:fs";
import Papa from "papaparse";
import { readBookFolder } from "#db/book/folder.ts";
import { factsOf } from "#engine/facts.ts";
import { saleAsks } from "#engine/sales/asks.ts";

/**
 * Writes what one sale takes, by drink, modifier text, version and item, so that DuckDB need not know what a spec is: its job is
 * then the smaller one.
 */
export function writeBills(book: string, file: string): void {
  const facts = factsOf(readBookFolder(book).book);
  const { catalogue } = facts;
  const singles = [...new Set(facts.book.modifiers.map(({ modifier }) => modifier))];
  const pairs = singles.flatMap((first) =>
    singles.filter((second) => second !== first).map((second) => `${first}; ${second}`),
  );
  const rows: (string | number)[][] = [];
  for (const drink of catalogue.drinks.keys()) {
    const versions = (catalogue.specs.get(drink) ?? []).map(({ from }) => from);
    for (const modifiers of ["", ...singles, ...pairs]) {
      for (const [at, from] of versions.entries()) {
        const sale = {
          businessDate: from,
          at: null,
          timed: true,
          ringName: drink,
          modifiers,
          quantity: 1,
          netMinor: 0,
        };
        const [ask] = saleAsks(catalogue, [sale]).asks;
        if (ask === undefined) continue;
        const until = versions[at + 1] ?? "9999-12-31";
        for (const { item, amount } of ask.bill.items)
          rows.push([drink, modifiers, from, until, item, "", amount]);
        const parts = ask.bill.cuts.flatMap(({ source, parts, shares }) =>
          parts.map((part) => ({ source, part, shares })),
        );
        for (const { source, part, shares } of parts)
          rows.push([drink, modifiers, from, until, source, part, shares]);
      }
    }
  }
  const headings = ["drink", "modifiers", "first", "until", "item", "part", "amount"];
  writeFileSync(file, Papa.unparse([headings, ...rows], { quotes: true }));
}
