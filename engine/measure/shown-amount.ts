import { unitFactor } from "#engine/measure/unit-factor.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import type { Venue } from "#engine/venue.ts";

/** What a venue says about how amounts are read. */
export type Measuring = Pick<Venue, "show" | "oz" | "houseMl">;

/** The unit in which a venue reads amounts of a base unit: ml → its `show` unit; g and each stay. */
export function shownUnit(base: BaseUnit, venue: Pick<Venue, "show">): string {
  return base === "ml" ? venue.show : base;
}

/** An amount in base units turned into the venue's shown unit. 29.57 ml → 1 (oz, us). */
export function inShownUnit(amount: number, base: BaseUnit, venue: Measuring): number {
  return base === "ml" ? amount / unitFactor(venue.show, venue).factor : amount;
}

/** Digits worth showing: ml and g whole, oz and cl one; pieces whole unless they are parts. */
export function shownDigits(unit: string, amount: number): number {
  if (Math.abs(amount) < 1e-9) return 0;
  if (unit === "ml" || unit === "g") return Math.abs(amount) < 10 && amount % 1 !== 0 ? 1 : 0;
  if (unit === "each") return amount % 1 === 0 || Math.abs(amount) >= 10 ? 0 : 1;
  return Math.abs(amount) < 1 ? 2 : 1;
}

/** An amount within a sentence of the engine. 2100 ml where oz is shown → "71.0 oz"; pieces read "12". */
export function shownAmount(amount: number, base: BaseUnit, venue: Measuring): string {
  const unit = shownUnit(base, venue);
  const shown = inShownUnit(amount, base, venue);
  const number = shown.toFixed(shownDigits(unit, shown));
  return base === "each" ? number : `${number} ${unit}`;
}
