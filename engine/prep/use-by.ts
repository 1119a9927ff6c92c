import type { Catalogue } from "#engine/catalogue.ts";
import { addDays, type BusinessDate } from "#engine/time.ts";
import { inForce } from "#engine/versions.ts";

/**
 * The last day on which a batch may be used: the day of making is day 1.
 *
 * Source: US Food Code 3-501.17, date marking (made on 1 April with 7 days → use by 7 April). Local codes may ask for
 * less. Part days are dropped, and the day of making always counts. Null where no shelf life is known.
 * useBy("2026-04-01", 7) → "2026-04-07"; useBy("2026-04-01", 1) → "2026-04-01".
 */
export function useBy(madeOn: BusinessDate, shelfLifeDays: number | null): BusinessDate | null {
  return shelfLifeDays === null ? null : addDays(madeOn, daysServed(shelfLifeDays) - 1);
}

/** Business days a batch can serve, the day of making among them: 1 for juice that dies tonight. 7 → 7; 0.5 → 1. */
export function daysServed(shelfLifeDays: number): number {
  return Math.max(1, Math.floor(shelfLifeDays));
}

/** The shelf life of a batch made on a date: of the `preps` row in force, else of the item; null when neither says. */
export function shelfLifeDays(catalogue: Catalogue, prep: string, date: BusinessDate): number | null {
  const version = inForce(catalogue.preps.get(prep) ?? [], date);
  return version?.shelfLifeDays ?? catalogue.items.get(prep)?.shelfLifeDays ?? null;
}
