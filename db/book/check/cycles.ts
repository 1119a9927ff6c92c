import { type CheckContext, wholeRows } from "#db/book/check/context.ts";
import { quote } from "#db/book/quote.ts";
import { SHEETS } from "#db/book/sheets/all.ts";
import { groupBy } from "#engine/catalogue.ts";
import type { BusinessDate } from "#engine/time.ts";

/** That one thing is made of others from one day on, and where the book says so. */
type Making = { from: BusinessDate; file: string; row: number; inputs: { item: string; row: number }[] };

/** Notes every prep that, on some day, is made of itself, with the path. */
export function refuseCycles(context: CheckContext): void {
  const makings = makingsOf(context);
  const dates = [...new Set([...makings.values()].flat().map(({ from }) => from))].sort();
  const told = new Set<string>();
  for (const date of dates) {
    for (const path of cyclesOn(makings, date)) {
      const identity = JSON.stringify([...path.items].sort());
      if (told.has(identity)) continue;
      told.add(identity);
      const since = date === "" ? "" : ` from ${date}`;
      context.findings.problem(
        { file: path.file, row: path.row, column: path.file === SHEETS.cuts.file ? "source" : "item" },
        `a prep cannot be made of itself, but${since} ${chain(path.items)}`,
      );
    }
  }
}

/** ["A", "B"] → `"A" needs "B", which needs "A"`. */
function chain(items: readonly string[]): string {
  const [first = "", ...rest] = [...items, items[0] ?? ""];
  return `${quote(first)} ${rest.map((item) => `needs ${quote(item)}`).join(", which ")}`;
}

/** By what is made: each version of its spec lines, and each of its cuts. Drinks are made of things, but never used. */
function makingsOf(context: CheckContext): Map<string, Making[]> {
  const makings = new Map<string, Making[]>();
  const add = (made: string, making: Making) => makings.set(made, [...(makings.get(made) ?? []), making]);
  const lines = wholeRows(context, "specs").filter(({ fact }) => !isDrink(context, fact.makes));
  for (const version of groupBy(lines, ({ fact }) => JSON.stringify([fact.makes, fact.from])).values()) {
    const [first] = version;
    if (first === undefined) continue;
    add(first.fact.makes, {
      from: first.fact.from,
      file: SHEETS.specs.file,
      row: first.row.row,
      inputs: version.map(({ row, fact }) => ({ item: fact.item, row: row.row })),
    });
  }
  for (const { row, fact } of wholeRows(context, "cuts")) {
    const inputs = [{ item: fact.source, row: row.row }];
    add(fact.gives, { from: fact.from ?? "", file: SHEETS.cuts.file, row: row.row, inputs });
  }
  return makings;
}

function isDrink({ rows }: CheckContext, name: string): boolean {
  return rows.drinks.some(({ cells }) => cells.name === name);
}

type Cycle = { items: string[]; file: string; row: number };

/** Walks from every prep through what it needs on a day, depth first, each prep once. */
function cyclesOn(makings: ReadonlyMap<string, readonly Making[]>, date: BusinessDate): Cycle[] {
  const cycles: Cycle[] = [];
  const done = new Set<string>();
  const path: string[] = [];
  const walk = (made: string): void => {
    path.push(made);
    for (const { file, inputs } of inForceOn(makings.get(made) ?? [], date)) {
      for (const { item, row } of inputs) {
        const at = path.indexOf(item);
        if (at >= 0) cycles.push({ items: path.slice(at), file, row });
        else if (!done.has(item) && makings.has(item)) walk(item);
      }
    }
    path.pop();
    done.add(made);
  };
  for (const made of makings.keys()) if (!done.has(made)) walk(made);
  return cycles;
}

/** The latest spec lines and the latest cut, each for itself. */
function inForceOn(makings: readonly Making[], date: BusinessDate): Making[] {
  const latest = new Map<string, Making>();
  for (const making of makings) {
    const held = latest.get(making.file);
    if (making.from <= date && (held === undefined || making.from >= held.from)) {
      latest.set(making.file, making);
    }
  }
  return [...latest.values()];
}
