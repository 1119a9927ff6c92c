/** How a sheet writes fractions; "unclear" when no number of it tells. */
export type DecimalMark = "point" | "comma" | "unclear";

const COMMA = /^[+-]?(?:0*,\d+|0,\d+|\d+,\d{1,2}|\d+,\d{4,}|\d{4,},\d+)$/;
const POINT = /^[+-]?(?:0*\.\d+|0\.\d+|\d+\.\d{1,2}|\d+\.\d{4,}|\d{4,}\.\d+|\d*\.\d+[eE][+-]?\d+)$/;

/**
 * Whether the numbers of a sheet have a decimal point or a decimal comma.
 *
 * "1,000" and "1.000" tell nothing: either may be a thousand. A point anywhere wins, so that a comma beside it is asked
 * about and not guessed. ["0,75", "12"] → "comma"; ["0.5", "0,75"] → "point"; ["1,000"] → "unclear".
 */
export function decimalMarkOf(numbers: Iterable<string>): DecimalMark {
  let found: DecimalMark = "unclear";
  for (const text of numbers) {
    const number = text.trim();
    if (POINT.test(number)) return "point";
    if (COMMA.test(number)) found = "comma";
  }
  return found;
}
