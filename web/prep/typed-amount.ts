import { readAmount } from "#engine/measure/amount.ts";
import { unitFactor } from "#engine/measure/unit-factor.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
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
