import { unitFactor } from "#engine/measure/unit-factor.ts";
import type { BaseUnit, Unit } from "#engine/measure/units.ts";
import type { Venue } from "#engine/venue.ts";
import { formatNumber } from "../format.ts";

/**
 * An amount as it is measured at the bench: whole ml, g or pieces, with litres and kilograms from a thousand on.
 * 1500 ml → "1.5 l"; 945 g → "945 g"; 3.6 each → "4 pieces".
 */
export function benchAmount(amount: number, unit: Unit, venue: Pick<Venue, "oz" | "houseMl">): string {
  const { base, factor } = unitFactor(unit, venue);
  return benchBase(amount * factor, base);
}

/** An amount to be made, rounded up to what is measured: whole ml, g and pieces, tenths of other units. 753.65 ml → 754. */
export function wholeUp(amount: number, unit: Unit): number {
  const steps = unit === "ml" || unit === "g" || unit === "each" || unit === "piece" ? 1 : 10;
  return Math.ceil(amount * steps - 1e-6) / steps;
}

/** As benchAmount, of an amount in base units. */
export function benchBase(amount: number, base: BaseUnit): string {
  if (base === "each") {
    const pieces = Math.ceil(amount - 1e-9);
    return `${formatNumber(pieces)} ${pieces === 1 ? "piece" : "pieces"}`;
  }
  if (amount >= 1000) return `${trimmed(amount / 1000, 2)} ${base === "ml" ? "l" : "kg"}`;
  return `${amount < 10 ? trimmed(amount, 1) : formatNumber(amount)} ${base}`;
}

function trimmed(value: number, digits: number): string {
  return formatNumber(Number(value.toFixed(digits)), digits)
    .replace(/([.,]\d*?)0+$/, "$1")
    .replace(/[.,]$/, "");
}
