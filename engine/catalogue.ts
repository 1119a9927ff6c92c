import type { Book } from "#engine/book.ts";
import { toBase } from "#engine/measure/convert.ts";
import { densityGPerMl } from "#engine/measure/density.ts";
import { unitFactor } from "#engine/measure/unit-factor.ts";
import type { Measures, Unit } from "#engine/measure/units.ts";
import { foldName } from "#engine/name.ts";
import type { Modifier, RingName } from "#engine/sales/ring.ts";
import type { Cut, Drink, PrepVersion, SpecLine } from "#engine/specs/spec.ts";
import type { Item, Pack } from "#engine/stock/item.ts";
import type { BusinessDate } from "#engine/time.ts";
import type { Venue } from "#engine/venue.ts";
import { groupVersions } from "#engine/versions.ts";

/** The lines of one drink or prep from one day on. */
export type SpecVersion = { from: BusinessDate; lines: SpecLine[] };

/** An item with the density it is reckoned with, stated or worked out; null when nothing gives one. */
export type CatalogueItem = Item & { densityGPerMl: number | null };

/** The book's catalogue, indexed for looking up; built once, then only read. */
export type Catalogue = {
  venue: Venue;
  measures: Measures;
  items: Map<string, CatalogueItem>;
  /** Sheet order within an item. */
  packs: Map<string, Pack[]>;
  drinks: Map<string, Drink>;
  specs: Map<string, SpecVersion[]>;
  preps: Map<string, PrepVersion[]>;
  /** By what the cut gives. */
  cuts: Map<string, Cut[]>;
  /** By folded name. */
  ringNames: Map<string, RingName>;
  modifiers: Map<string, Modifier[]>;
  drinkNames: Map<string, string>;
  itemNames: Map<string, string>;
  /** Every day from which some spec, prep, cut or pack is another, ascending: bills are alike between two. */
  changeDates: BusinessDate[];
};

/** Indexes a book for the computations. The book's references are taken as checked. */
export function catalogueOf(book: Book): Catalogue {
  const { venue } = book;
  const packs = groupBy(book.packs, (pack) => pack.item);
  return {
    venue,
    measures: { oz: venue.oz, houseMl: venue.houseMl },
    items: new Map(
      book.items.map((item) => [item.name, withDensity(item, packs.get(item.name) ?? [], venue)]),
    ),
    packs,
    drinks: new Map(book.drinks.map((drink) => [drink.name, drink])),
    specs: specVersions(book.specs),
    preps: groupVersions(book.preps, (prep) => prep.prep),
    cuts: groupVersions(book.cuts, (cut) => cut.gives),
    ringNames: new Map(book.ringNames.map((ring) => [foldName(ring.ringName), ring])),
    modifiers: groupBy(book.modifiers, (modifier) => foldName(modifier.modifier)),
    drinkNames: new Map(book.drinks.map(({ name }) => [foldName(name), name])),
    itemNames: new Map(book.items.map(({ name }) => [foldName(name), name])),
    changeDates: changeDates(book),
  };
}

/** The item of a name that the book is known to have. Throws when it has not: a fault of the program. */
export function itemNamed(catalogue: Catalogue, name: string): CatalogueItem {
  const item = catalogue.items.get(name);
  if (item === undefined) throw new Error(`The catalogue has no item "${name}".`);
  return item;
}

/** An amount as written, in the item's base unit. Throws where the book should not have let the unit in. */
export function baseAmount(
  catalogue: Catalogue,
  { item, amount, unit }: { item: string; amount: number; unit: Unit },
): number {
  const facts = itemNamed(catalogue, item);
  const inBase = toBase(amount, unit, facts, catalogue.measures);
  if (inBase === undefined) {
    throw new Error(`"${item}" is kept in ${facts.base}; ${amount} ${unit} cannot be turned into it.`);
  }
  return inBase;
}

function specVersions(lines: readonly SpecLine[]): Map<string, SpecVersion[]> {
  const byMakes = new Map<string, SpecVersion[]>();
  for (const [makes, own] of groupBy(lines, (line) => line.makes)) {
    const versions = [...groupBy(own, (line) => line.from)].map(([from, versionLines]) => ({
      from,
      lines: [...versionLines].sort((a, b) => a.line - b.line),
    }));
    byMakes.set(
      makes,
      versions.sort((a, b) => (a.from < b.from ? -1 : 1)),
    );
  }
  return byMakes;
}

function withDensity(item: Item, packs: readonly Pack[], venue: Venue): CatalogueItem {
  const weighed = packs.find((pack) => pack.emptyG !== null && pack.fullG !== null);
  const known = densityGPerMl(item, weighed === undefined ? undefined : weighedPack(weighed, venue));
  return { ...item, densityGPerMl: known?.densityGPerMl ?? null };
}

function weighedPack(pack: Pack, venue: Venue) {
  const { base, factor } = unitFactor(pack.unit, { oz: venue.oz, houseMl: venue.houseMl });
  if (base !== "ml") return undefined;
  return { emptyG: pack.emptyG, fullG: pack.fullG, volumeMl: pack.amount * factor };
}

function changeDates(book: Book): BusinessDate[] {
  const dates = [...book.specs, ...book.preps, ...book.cuts, ...book.packs].flatMap(({ from }) => from ?? []);
  return [...new Set(dates)].sort();
}

/** Groups in order of first appearance. */
export function groupBy<T>(list: readonly T[], keyOf: (entry: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const entry of list) {
    const key = keyOf(entry);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [entry]);
    else group.push(entry);
  }
  return groups;
}
