import { quote } from "#db/book/quote.ts";
import type { Row } from "#db/book/sheet.ts";
import type { Rows } from "#db/book/sheets/all.ts";
import { type Catalogue, type CatalogueItem, catalogueOf } from "#engine/catalogue.ts";
import { toBase } from "#engine/measure/convert.ts";
import { DEFAULT_UNCERTAINTY } from "#engine/measure/uncertainty.ts";
import { unitFactor } from "#engine/measure/unit-factor.ts";
import { DEFAULT_HOUSE_ML, type Unit } from "#engine/measure/units.ts";
import { usualDensity, usualPieceG } from "#engine/measure/usual-figures.ts";
import type { Item, Pack } from "#engine/stock/item.ts";
import { DEFAULT_SERVICE_LEVEL, type Venue } from "#engine/venue.ts";

/** Whether amounts can be turned into the base units of their items. */
export type Units = {
  /** Undefined for an item whose own row is wrong. */
  item(name: string): CatalogueItem | undefined;
  /** What must be added so that the unit can be used for the item; undefined when it can be, or is not known. */
  trouble(item: string, unit: Unit): string | undefined;
  /** What one container of a pack, or one piece of a cut, holds in base units; undefined where that is not known. */
  sizeOf(pack: Pick<Pack, "item" | "amount" | "unit">): number | undefined;
};

const EMPTY = {
  suppliers: [],
  supplierDays: [],
  closures: [],
  areas: [],
  drinks: [],
  preps: [],
  specs: [],
  cuts: [],
  ringNames: [],
  modifiers: [],
  counts: [],
  deliveries: [],
  batches: [],
  batchInputs: [],
  losses: [],
  transfers: [],
  events: [],
  plans: [],
  orders: [],
  salesShapes: [],
};

/** Stands in for a venue that could not be read, so that the sheets can still be checked. */
const NO_VENUE: Venue = {
  name: "-",
  currency: "EUR",
  timeZone: "UTC",
  dayEnds: "04:00",
  oz: "us",
  show: "ml",
  houseMl: DEFAULT_HOUSE_ML,
  serviceLevel: DEFAULT_SERVICE_LEVEL,
  uncertainty: DEFAULT_UNCERTAINTY,
};

/** The units of a book's items as far as their rows are right. */
export function unitsOf(rows: Pick<Rows, "items" | "packs">, venue: Venue | undefined): Units {
  const items = facts<Item>(rows.items);
  const packs = facts<Pack>(rows.packs).filter(
    ({ emptyG, fullG }) => emptyG === null || fullG === null || fullG > emptyG,
  );
  const catalogue = catalogueOf({ ...EMPTY, venue: venue ?? NO_VENUE, items, packs });
  return {
    item: (name) => catalogue.items.get(name),
    trouble: (name, unit) => trouble(catalogue, name, unit),
    sizeOf: (pack) => {
      const item = catalogue.items.get(pack.item);
      return item === undefined ? undefined : toBase(pack.amount, pack.unit, item, catalogue.measures);
    },
  };
}

function facts<T>(rows: readonly Row<T>[]): T[] {
  return rows.filter(({ isWhole }) => isWhole).map(({ cells }) => cells as T);
}

function trouble(catalogue: Catalogue, name: string, unit: Unit): string | undefined {
  const item = catalogue.items.get(name);
  if (item === undefined || toBase(1, unit, item, catalogue.measures) !== undefined) return undefined;
  const { base } = unitFactor(unit, catalogue.measures);
  const needed = [
    ...(base !== "each" && item.base !== "each" ? [DENSITY] : []),
    ...(base === "each" || item.base === "each" ? [pieceNeeds(item, base)] : []),
  ];
  return `${quote(name)} is kept in ${item.base}, which ${quote(unit)} does not lead to; write another unit or add ${needed.join(" and ")} in items.csv${figureHint(item, needed.join(" "))}`;
}

/** What such a thing usually weighs, for someone who has neither scale nor label at hand: " (lime: about 80 g, USDA SR26)". */
export function figureHint(item: CatalogueItem, needed: string): string {
  const piece = needed.includes("piece_g") ? usualPieceG(item.name) : undefined;
  const density = needed.includes("density_g_per_ml") ? usualDensity(item.name) : undefined;
  const hints = [
    ...(piece === undefined ? [] : [`a ${piece.name} weighs about ${Math.round(piece.figure)} g as bought`]),
    ...(density === undefined ? [] : [`${density.name} weighs about ${density.figure.toFixed(2)} g/ml`]),
  ];
  return hints.length === 0 ? "" : ` (${hints.join(", ")}; USDA SR26)`;
}

const DENSITY = "density_g_per_ml (or brix, or the weights of an empty and a full container)";

function pieceNeeds(item: CatalogueItem, given: string): string {
  const needsDensity = (given === "ml" || item.base === "ml") && item.densityGPerMl === null;
  const needsPiece = item.pieceG === null;
  if (needsDensity && needsPiece) return `piece_g and ${DENSITY}`;
  return needsDensity ? DENSITY : "piece_g";
}
