/** Vulgar fractions of Unicode by NFKD: "¾" becomes "3⁄4" with U+2044. */
const MIXED = /^([+-]?)(?:(\d+)\s+)?(\d+)\s*\/\s*(\d+)$/;
const DECIMAL = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?$/;

export type AmountStyle = {
  /** Where the sheet's other numbers show a decimal comma, "0,75" is three quarters. */
  decimalComma?: boolean;
};

/**
 * The number a person wrote: "0.75", "3/4", "¾", "1 1/2", "1½", and "0,75" where commas are decimal.
 *
 * Returns undefined for anything else, for a zero denominator and for numbers too large to hold.
 * "1½" → 1.5; "1 1/2" → 1.5; ".5" → 0.5; "1e309" → undefined; "1/0" → undefined.
 */
export function readAmount(text: string, style: AmountStyle = {}): number | undefined {
  const plain = spacedFractions(text).trim();
  const number = style.decimalComma ? plain.replace(/^([+-]?\d*),(\d+)$/, "$1.$2") : plain;
  if (DECIMAL.test(number)) return finite(Number(number));
  const mixed = MIXED.exec(number);
  if (mixed === null) return undefined;
  const [, sign, whole, numerator, denominator] = mixed;
  const size = Number(whole ?? 0) + Number(numerator) / Number(denominator);
  return finite(sign === "-" ? -size : size);
}

/** "1½" → "1 1/2": the whole part is kept apart from the fraction that follows it. */
function spacedFractions(text: string): string {
  return text
    .replace(/[¼-¾⅐-⅞]/g, (fraction) => ` ${fraction.normalize("NFKD")}`)
    .replaceAll("\u2044", "/")
    .replaceAll("\u2212", "-")
    .replace(/\s+/g, " ");
}

function finite(value: number): number | undefined {
  return Number.isFinite(value) ? value : undefined;
}
