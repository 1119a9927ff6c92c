import { baseAmount, type Catalogue, itemNamed } from "#engine/catalogue.ts";
import type { Unit } from "#engine/measure/units.ts";
import { shelfLifeDays } from "#engine/prep/use-by.ts";
import { billOfBatch, type CutAsk } from "#engine/specs/bill.ts";
import type { BusinessDate } from "#engine/time.ts";
import { inForce } from "#engine/versions.ts";

/** How a prep is made on a date. Amounts are in base units of the prep unless they say otherwise. */
export type Making = {
  prep: string;
  /** The unit its batches are spoken of in, and how many base units one is. */
  unit: Unit;
  perUnit: number;
  /** Batches are whole multiples of this. */
  batchStep: number | null;
  /** The most one batch can be. */
  vesselMax: number | null;
  activeMinutes: number | null;
  standingHours: number | null;
  shelfLifeDays: number | null;
  method: string;
  /** Per base unit made, in the input's base unit; preps made to order are opened, stocked ones stay. */
  inputs: { item: string; perUnit: number }[];
  /** What one base unit made asks of fruit. */
  cuts: CutAsk[];
};

/** Every stocked item that the house knows how to make on a date, in the order of the items sheet. */
export function makingsOn(catalogue: Catalogue, date: BusinessDate): Making[] {
  const stocked = [...catalogue.items.values()].filter((item) => item.stocked);
  return stocked.flatMap(({ name }) => makingOf(catalogue, name, date) ?? []);
}

/**
 * How one item is made on a date; undefined when it is only bought, or has no version yet.
 * A prep with a cut and no `preps` row is spoken of in the cut's unit. Throws PrepCycleError from the bill.
 */
export function makingOf(catalogue: Catalogue, prep: string, date: BusinessDate): Making | undefined {
  const item = itemNamed(catalogue, prep);
  const bill = billOfBatch(catalogue, { prep, amount: 1, date });
  if (bill === undefined) return undefined;
  const version = inForce(catalogue.preps.get(prep) ?? [], date);
  const unit = madeInUnit(catalogue, prep, date);
  const perUnit = baseAmount(catalogue, { item: prep, amount: 1, unit });
  return {
    prep,
    unit,
    perUnit,
    batchStep: version?.batchStep == null ? wholePieces(item.base) : version.batchStep * perUnit,
    vesselMax: version?.vesselMax == null ? null : version.vesselMax * perUnit,
    activeMinutes: version?.activeMinutes ?? null,
    standingHours: version?.standingHours ?? null,
    shelfLifeDays: shelfLifeDays(catalogue, prep, date),
    method: version?.method ?? "",
    inputs: bill.items.map(({ item: input, amount }) => ({ item: input, perUnit: amount })),
    cuts: bill.cuts,
  };
}

/** The unit an item is made in on a date: of its `preps` row, else of its cut, else its base unit. */
export function madeInUnit(catalogue: Catalogue, name: string, date: BusinessDate): Unit {
  const version = inForce(catalogue.preps.get(name) ?? [], date);
  const cut = inForce(catalogue.cuts.get(name) ?? [], date);
  return version?.unit ?? cut?.unit ?? itemNamed(catalogue, name).base;
}

// Half a bottled drink cannot be made.
function wholePieces(base: "ml" | "g" | "each"): number | null {
  return base === "each" ? 1 : null;
}
