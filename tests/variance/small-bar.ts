import { Book } from "#engine/book.ts";
import { type Facts, factsOf } from "#engine/facts.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { Cut, Drink, PrepVersion, SpecLine } from "#engine/specs/spec.ts";
import type { Count } from "#engine/stock/counts.ts";
import { Item, Pack } from "#engine/stock/item.ts";
import type { CountRow } from "#engine/stock/movement.ts";
import { newItem } from "#engine/stock/new-item.ts";
import { anEmptyBook } from "#tests/support/hand-bar.ts";

/** An item with what most have; the test names the rest. */
export function item(name: string, over: Partial<Item> = {}): Item {
  return Item.parse(newItem({ name, category: "spirit", base: "ml", ...over }));
}

export function pack(of: string, amount: number, over: Partial<Pack> = {}): Pack {
  return Pack.parse({
    item: of,
    pack: `${amount} ${over.unit ?? "ml"}`,
    amount,
    unit: "ml",
    from: null,
    perCase: 6,
    supplier: "Quarry Drinks",
    code: "",
    gtin: "",
    price: amount / 40,
    pricePer: "container",
    split: true,
    emptyG: null,
    fullG: null,
    depositMinor: null,
    ...over,
  });
}

export function drink(name: string, over: Partial<Drink> = {}): Drink {
  return Drink.parse({
    name,
    priceMinor: 1200,
    glass: "",
    glassMl: null,
    ice: null,
    technique: null,
    garnishNote: "",
    method: "",
    allergens: [],
    onMenuFrom: null,
    onMenuUntil: null,
    ...over,
  });
}

/** Lines of one version, each "amount unit item" with `|` before every item that would also do. */
export function spec(makes: string, from: string, ...lines: string[]): SpecLine[] {
  return lines.map((text, index) => {
    const [written = "", ...orItems] = text.split("|").map((part) => part.trim());
    const match = /^(\S+) (\S+) (.+)$/.exec(written);
    if (match === null) throw new Error(`"${text}" is no spec line.`);
    return SpecLine.parse({
      makes,
      from,
      line: index + 1,
      amount: match[2] === "top" ? null : Number(match[1]),
      unit: match[2],
      item: match[3],
      orItems,
      note: "",
    });
  });
}

export function prep(name: string, yieldAmount: number, over: Partial<PrepVersion> = {}): PrepVersion {
  return PrepVersion.parse({
    prep: name,
    from: "2026-01-01",
    yield: yieldAmount,
    unit: "ml",
    batchStep: null,
    vesselMax: null,
    activeMinutes: null,
    standingHours: null,
    shelfLifeDays: null,
    method: "",
    ...over,
  });
}

export function cut(source: string, gives: string, perPiece: number, unit: string, parts: string[]): Cut {
  return Cut.parse({ source, from: null, gives, perPiece, unit, parts });
}

export function counted(count: string, at: string, of: string, over: Partial<CountRow>): CountRow {
  return {
    count,
    at,
    area: "Bar",
    item: of,
    pack: null,
    full: null,
    parts: [],
    grossG: [],
    amount: null,
    unit: null,
    by: "",
    ...over,
  };
}

/** Sales of a whole business day, with a time of day unless told otherwise. */
export function sold(
  businessDate: string,
  ringName: string,
  quantity: number,
  over: Partial<SaleGroup> = {},
): SaleGroup {
  return {
    businessDate,
    at: null,
    timed: true,
    ringName,
    modifiers: "",
    quantity,
    netMinor: quantity * 1200,
    ...over,
  };
}

/** Facts of a book that holds what the test names and nothing else. */
export function barOf(sheets: Partial<Book>): Facts {
  const empty = anEmptyBook();
  return factsOf(
    Book.parse({
      ...empty,
      venue: { ...empty.venue, name: "The Small Bar", timeZone: "Europe/Lisbon" },
      ...sheets,
    }),
  );
}

/** The count of a name. */
export function countNamed({ counts }: Facts, name: string): Count {
  const count = counts.find((candidate) => candidate.name === name);
  if (count === undefined) throw new Error(`No count "${name}".`);
  return count;
}
