import { readAmount } from "#engine/measure/amount.ts";

export type DecimalMark = "." | ",";

/** What the numbers of a column show about their decimal mark. */
export type DecimalEvidence = { dot: string | null; comma: string | null; unclear: string | null };

/** Spaces that group thousands or stand beside a sign or currency; "1 2" is no twelve. */
const SPACES = /(?<=\d)\s(?=\d{3}(?!\d))|(?<!\d)\s|\s(?!\d)/gu;
const MINUS = /[\u2212\u2012\u2013\u2014\ufe63\uff0d]/g;
/** Signs and abbreviations of currencies at either end of an amount. */
const CURRENCY =
  /^(?:\p{Sc}|[A-Z]{1,3}\p{Sc}|[A-Z]{3}|kr\.?|kč|zł|ft|lei|fr\.?|rs\.?|r(?=\d))|(?:\p{Sc}|[A-Z]{3}|kr\.?|kč|zł|ft|lei|fr\.?)$/iu;
const NO_CHARGE = /^(?:free|comp|comped|gratis|kostenlos|offert|invitación|omaggio)$/i;
const EMPTY = /^(?:[-.–—]*|n\/?a|null|none)$/i;
const CELL_CHARACTERS_MOST = 40;

/**
 * "(1'234.50 €)" → "-1234.50": the sign in front; currency, spaces and apostrophes gone; decimal and thousands marks left.
 *
 * "" for a text with two signs, which is no number: "--1", "-1-". A minus inside parentheses is one sign.
 */
function bareNumber(cell: string): string {
  let text = cell.replace(SPACES, "").replace(MINUS, "-");
  const isBracketed = text.startsWith("(") && text.endsWith(")");
  if (isBracketed) text = text.slice(1, -1);
  let signs = "";
  // Signs may stand before or after the currency, so look on both sides of it.
  for (let pass = 0; pass < 2; pass += 1) {
    if (/^[-+]/.test(text)) {
      signs += text[0];
      text = text.slice(1);
    }
    if (/\d[.,]-$/.test(text)) text = text.slice(0, -2);
    else if (text.length > 1 && text.endsWith("-")) {
      signs += "-";
      text = text.slice(0, -1);
    }
    text = text.replace(CURRENCY, "");
  }
  if (signs.length > 1) return "";
  text = text.replace(/(?<=\d)['’`´](?=\d{3})/g, "");
  return isBracketed || signs === "-" ? `-${text}` : text;
}

/** Adds what one cell shows about the decimal mark of its column. "1.234,5" shows a comma; "1.234" is unclear. */
export function weighDecimal(cell: string, evidence: DecimalEvidence): void {
  if (!(cell.includes(".") || cell.includes(",")) || cell.length > CELL_CHARACTERS_MOST) return;
  const text = bareNumber(cell).replace("-", "");
  if (!/^[\d.,]+$/.test(text)) return;
  const decimal = decimalMarkIn(text);
  if (decimal === ".") evidence.dot ??= cell;
  else if (decimal === ",") evidence.comma ??= cell;
  else evidence.unclear ??= cell;
}

/** The decimal mark of digits with marks between them, where they show it. "1.234.567" → ","; "1.234" → undefined. */
function decimalMarkIn(text: string): DecimalMark | undefined {
  const lastDot = text.lastIndexOf(".");
  const lastComma = text.lastIndexOf(",");
  const mark: DecimalMark = lastDot > lastComma ? "." : ",";
  const other: DecimalMark = mark === "." ? "," : ".";
  if (text.split(mark).length > 2) return other;
  if (text.includes(other)) return mark;
  const [head = "", tail = ""] = text.split(mark);
  return tail.length !== 3 || head === "" || head.startsWith("0") || head.length > 3 ? mark : undefined;
}

export function noEvidence(): DecimalEvidence {
  return { dot: null, comma: null, unclear: null };
}

/** A number as its digits, with "." for the decimal mark and without thousands; undefined if it is none. */
function digitsOf(cell: string, decimal: DecimalMark): string | undefined {
  if (cell.length > CELL_CHARACTERS_MOST) return undefined;
  const text = bareNumber(cell);
  if (/^-?\d+$/.test(text)) return text;
  const form =
    decimal === "."
      ? /^-?(?:\d+|\d{1,3}(?:,\d{2,3})*,\d{3})?(?:\.\d*)?$/
      : /^-?(?:\d+|\d{1,3}(?:\.\d{2,3})*\.\d{3})?(?:,\d*)?$/;
  if (!form.test(text) || !/\d/.test(text)) return undefined;
  const joined = decimal === "." ? text.replaceAll(",", "") : text.replaceAll(".", "").replace(",", ".");
  return joined;
}

const QUANTITY_MOST = 1_000_000;

/**
 * How many were sold, as a till writes it: "2", "-1", "(1)", "1-", "2x", "x 2", "1,000" by the column's decimal mark, "½".
 *
 * Undefined for anything else, and for more than a million of one line. "2,5" with decimal "," → 2.5; "1e309" → undefined.
 */
export function readQuantity(cell: string, decimal: DecimalMark): number | undefined {
  const text = cell
    .trim()
    .replace(/^(?:x|×)\s*(?=\d)|(?<=\d)\s*(?:x|×|pcs?\.?|stk\.?|st\.?|ea\.?|pz\.?|uds?\.?)$/iu, "");
  const digits = digitsOf(text, decimal);
  const value = digits === undefined ? fraction(text) : Number(digits);
  return value === undefined || Math.abs(value) > QUANTITY_MOST ? undefined : value + 0;
}

function fraction(text: string): number | undefined {
  return /[/¼-¾⅐-⅞]/.test(text) && text.length <= CELL_CHARACTERS_MOST ? readAmount(text) : undefined;
}

/** Nothing written where money could stand: "", "-", "n/a". */
export function isEmptyMoney(cell: string): boolean {
  return EMPTY.test(cell.trim());
}

/**
 * Money as a till writes it, in whole minor units, halves rounded away from zero.
 *
 * Reads "€ 12,50", "$-12.50", "(12.50)", "12.50-", "1'234.50", "CHF 12.–", "free" (0). Undefined for anything else and for
 * amounts beyond nine million million minor units. "12.505" with two currency digits → 1251.
 */
export function readMoneyMinor(
  cell: string,
  decimal: DecimalMark,
  currencyDigits: number,
): number | undefined {
  const text = cell.trim();
  if (NO_CHARGE.test(text)) return 0;
  const digits = digitsOf(text, decimal);
  if (digits === undefined) return undefined;
  const isNegative = digits.startsWith("-");
  const [whole = "", part = ""] = digits.replace("-", "").split(".");
  const kept = Number(`${whole}${part.slice(0, currencyDigits).padEnd(currencyDigits, "0")}`);
  const minor = kept + (Number(part[currencyDigits] ?? "0") >= 5 ? 1 : 0);
  if (minor > 9e12) return undefined;
  return isNegative && minor !== 0 ? -minor : minor;
}
