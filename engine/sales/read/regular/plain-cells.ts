import { NOTHING } from "#engine/sales/packed/day-columns.ts";

/** Cells in their plainest writing, read from bytes. NaN says that a cell is not so plain: the general reader knows it then. */

const [MINUS, ZERO, COLON, SPACE] = [45, 48, 58, 32];
const DIGITS_MOST = 10;
const POWERS = [1, 10, 100, 1000, 10_000];

/** Whether the last number read had a decimal mark. */
export let hadMark = false;

/**
 * A number of at most ten digits with one or two decimals, times ten to the power of `scale`; NaN for any other writing.
 *
 * Decimals beyond the scale are left to the general reader. "-12.5" with scale 2 → -1250.
 */
export function plainNumber(
  bytes: Uint8Array,
  start: number,
  end: number,
  mark: number,
  scale: number,
): number {
  hadMark = false;
  let at = start;
  const isNegative = bytes[at] === MINUS;
  if (isNegative) at += 1;
  const first = at;
  let value = 0;
  while (at < end) {
    const digit = (bytes[at] as number) - ZERO;
    if (digit < 0 || digit > 9) break;
    value = value * 10 + digit;
    at += 1;
  }
  if (at === first || at - first > DIGITS_MOST) return Number.NaN;
  let decimals = 0;
  if (at < end) {
    decimals = end - at - 1;
    // Three decimals could be thousands; that is for all cells of the column together to decide.
    if (bytes[at] !== mark || decimals < 1 || decimals > 2 || decimals > scale) return Number.NaN;
    hadMark = true;
    for (at += 1; at < end; at += 1) {
      const digit = (bytes[at] as number) - ZERO;
      if (digit < 0 || digit > 9) return Number.NaN;
      value = value * 10 + digit;
    }
  }
  value *= POWERS[scale - decimals] ?? Number.NaN;
  return isNegative && value !== 0 ? -value : value;
}

/** A check or line number of plain digits; NOTHING for an empty cell. */
export function plainCode(bytes: Uint8Array, start: number, end: number): number {
  if (start === end) return NOTHING;
  if (end - start > 15 || (bytes[start] === ZERO && end - start > 1)) return Number.NaN;
  let value = 0;
  for (let at = start; at < end; at += 1) {
    const digit = (bytes[at] as number) - ZERO;
    if (digit < 0 || digit > 9) return Number.NaN;
    value = value * 10 + digit;
  }
  return value;
}

/** Seconds after midnight of "21:05", "9:05", "21:05:30" and, with an am or pm behind it, "9:05 PM". */
export function plainTime(bytes: Uint8Array, start: number, end: number): number {
  let at = start;
  let hour = digitAt(bytes, at);
  if (bytes[at + 1] !== COLON) {
    hour = hour * 10 + digitAt(bytes, at + 1);
    at += 1;
  }
  if (bytes[at + 1] !== COLON || at + 4 > end) return Number.NaN;
  const minute = digitAt(bytes, at + 2) * 10 + digitAt(bytes, at + 3);
  at += 4;
  let second = 0;
  if (at < end && bytes[at] === COLON) {
    if (at + 3 > end) return Number.NaN;
    second = digitAt(bytes, at + 1) * 10 + digitAt(bytes, at + 2);
    at += 3;
  }
  if (at < end) hour = inHalf(bytes, at, end, hour);
  return hour <= 23 && minute <= 59 && second <= 59 ? hour * 3600 + minute * 60 + second : Number.NaN;
}

/** The hour by a half of the day such as " PM" or "am"; NO_DIGIT for anything else. */
function inHalf(bytes: Uint8Array, from: number, end: number, hour: number): number {
  const start = bytes[from] === SPACE ? from + 1 : from;
  const isHalf = end - start === 2 && ((bytes[start + 1] as number) | 32) === 109;
  const letter = (bytes[start] as number) | 32;
  if (!isHalf || (letter !== 97 && letter !== 112) || hour < 1 || hour > 12) return NO_DIGIT;
  return (hour % 12) + (letter === 112 ? 12 : 0);
}

/** So large that no number with it in any place is an hour or a minute. */
const NO_DIGIT = 1000;

function digitAt(bytes: Uint8Array, at: number): number {
  const digit = (bytes[at] as number) - ZERO;
  return digit >= 0 && digit <= 9 ? digit : NO_DIGIT;
}
