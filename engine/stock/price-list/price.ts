import { type DecimalMark, readMoneyMinor } from "#engine/sales/read/number.ts";

/** Digits after the mark that a unit price may have; a tenth of a cent matters for a straw. */
const DIGITS = 4;

/** A price as a list writes it, in major units: "€ 17,50" → 17.5; undefined for what is none. */
export function readPrice(text: string, decimal: DecimalMark): number | undefined {
  const minor = readMoneyMinor(text, decimal, DIGITS);
  return minor === undefined ? undefined : minor / 10 ** DIGITS;
}
