import type { Refers } from "#db/book/cell.ts";
import type { Findings } from "#db/book/problem.ts";
import { quote, quoteList } from "#db/book/quote.ts";
import type { Row } from "#db/book/sheet.ts";
import { type Rows, SHEETS } from "#db/book/sheets/all.ts";
import { didYouMean } from "#db/book/suggest.ts";
import { foldName } from "#engine/name.ts";

/** Names by their folded form, each as the sheet that defines it spells it. */
export type Spellings = Map<string, string>;

/** The names that the book defines. */
export type Names = Record<Refers, Spellings> & {
  /** The packs of each item. */
  packs: Map<string, Spellings>;
  /** Messages for unknown names; one wrong name often stands in hundreds of rows. */
  unknown: Map<string, string>;
};

const DEFINING = {
  item: { key: "items", heading: "item" },
  drink: { key: "drinks", heading: "drink" },
  supplier: { key: "suppliers", heading: "supplier" },
} as const;
const RESERVED: ReadonlyMap<string, readonly Refers[]> = new Map([
  ["all", ["supplier"]],
  ["ignore", ["item", "drink"]],
]);

/** Collects the names of items, drinks and suppliers; a name defined twice is a problem. */
export function definedNames(rows: Rows, findings: Findings): Names {
  return {
    item: spellings("item", rows.items, findings),
    drink: spellings("drink", rows.drinks, findings),
    supplier: spellings("supplier", rows.suppliers, findings),
    packs: new Map(),
    unknown: new Map(),
  };
}

function spellings(kind: Refers, rows: readonly Row<{ name: string }>[], findings: Findings): Spellings {
  const { key, heading } = DEFINING[kind];
  const { file } = SHEETS[key];
  const found: Spellings = new Map();
  const firstRow = new Map<string, number>();
  for (const { row, cells } of rows) {
    if (cells.name === undefined) continue;
    const folded = foldName(cells.name);
    const place = { file, row, column: heading };
    if (RESERVED.get(folded)?.includes(kind)) {
      findings.problem(
        place,
        `${quote(cells.name)} has a meaning of its own in other sheets; choose another name`,
      );
    }
    const first = firstRow.get(folded);
    if (first !== undefined) {
      findings.problem(place, `${quote(cells.name)} is already in row ${first}; give each ${kind} one row`);
      continue;
    }
    firstRow.set(folded, row);
    found.set(folded, cells.name);
  }
  return found;
}

/** The message for a name that no sheet defines. */
export function unknownName(kind: Refers, name: string, names: Names): string {
  const key = `${kind} ${name}`;
  const message =
    names.unknown.get(key) ?? `no ${kind} ${quote(name)}${didYouMean(name, names[kind].values())}`;
  names.unknown.set(key, message);
  return message;
}

/** The message for a pack that the item does not have. */
export function unknownPack(item: string, pack: string, names: Names): string {
  const packs = [...(names.packs.get(item)?.values() ?? [])];
  return `no pack ${quote(pack)} of ${quote(item)}; it has ${quoteList(packs)}`;
}
