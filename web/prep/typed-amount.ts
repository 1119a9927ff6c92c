import { readAmount } from "#engine/measure/amount.ts";
import { unitFactor } from "#engine/measure/unit-factor.ts";
import type { BaseUnit, Unit } from "#engine/measure/units.ts";
import { readUnit } from "#engine/specs/text/measure-words.ts";
import type { Venue } from "#engine/venue.ts";

const NUMBER = /^[\d\s.,/¼-¾⅐-⅞]+/;

/**
 * What a cook types of one item, in its base unit; a number alone is in that unit. Undefined for anything else.
 *
 * Of sugar in g: "1.1 kg" → 1100, "950" → 950, "1 l" → undefined.
 */
export function typedAmount(
  text: string,
  base: BaseUnit,
  venue: Pick<Venue, "oz" | "houseMl">,
): number | undefined {
  const written = text.trim();
  const number = NUMBER.exec(written)?.[0] ?? "";
  const amount = readAmount(number.trim(), { decimalComma: true });
  if (amount === undefined || amount < 0) return undefined;
  const unit = written.slice(number.length).trim();
  if (unit === "") return amount;
  const found = readUnit(unit);
  if (found === undefined || found.rest.trim() !== "") return undefined;
  const { base: measured, factor } = unitFactor(found.unit, venue);
  return measured === base ? amount * found.factor * factor : undefined;
}

/**
 * As typedAmount, in the unit that is asked for: a number alone is in that unit. Asked in ml: "1.5 l" → 1500, "900" → 900.
 */
export function typedIn(text: string, unit: Unit, venue: Pick<Venue, "oz" | "houseMl">): number | undefined {
  const plain = readAmount(text.trim(), { decimalComma: true });
  if (plain !== undefined) return plain;
  const { base, factor } = unitFactor(unit, venue);
  const amount = typedAmount(text, base, venue);
  return amount === undefined ? undefined : amount / factor;
}
