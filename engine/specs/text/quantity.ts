import { RefusedLine } from "#engine/specs/text/entry.ts";

/** A number at the start of a text, and what follows it. `range` is what was written where it is a mean. */
export type Quantity = { amount: number; range: string | null; rest: string };

const PARTS: Record<string, number> = {
  half: 2,
  third: 3,
  quarter: 4,
  fourth: 4,
  fifth: 5,
  sixth: 6,
  eighth: 8,
};

const PART = "half|third|quarter|fourth|fifth|sixth|eighth";
const FIGURE = "one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve";

const WORDS: Record<string, number> = {
  half: 0.5,
  quarter: 0.25,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  eleven: 11,
  twelve: 12,
};

/** "1-8.4 oz can" is one can of 8.4 oz, not a range. */
const WIDEST_RANGE = 4;

type Found = { amount: number; rest: string };

/** In the order in which they are tried; the first that matches is the number. */
const FORMS: readonly (readonly [pattern: RegExp, amountOf: (found: RegExpExecArray) => number])[] = [
  [/^(\d+)(?:\s+(?:and\s+|&\s*|\+\s*)?|-)(\d+)\s?\/\s?(\d+)(?![\d/.]|-inch)/i, mixed],
  [/^(\d+)\s?\/\s?(\d+)(?![\d/.])/, fraction],
  [/^\d+(?:\.\d+)?e[+-]?\d+(?![\d.])/i, (found) => Number(found[0])],
  [/^(\d*[.,]\d+)(?![\d/]|[.,]\d)/, (found) => Number(found[0].replace(",", "."))],
  [/^(\d+)(?![\d/.,])/, (found) => Number(found[1])],
  [/^(\d+)(?=[.,]?\s)/, (found) => Number(found[1])],
  [new RegExp(`^(${FIGURE}|\\d+)[\\s-]+and[\\s-]+(?:an?|one)[\\s-]+(${PART})\\b`, "i"), wordMixed],
  [
    new RegExp(`^(${FIGURE}|\\d+)[\\s-]+and[\\s-]+(?:(three)[\\s-]+(quarter|fourth)s|(half))\\b`, "i"),
    wordMixedThree,
  ],
  [/^three[\s-](?:quarter|fourth)s?\s+(?:of\s+)?(?:an?\b)?/i, () => 0.75],
  [
    /^(?:(?:an?|one)[\s-]+(third|fourth|fifth|sixth|eighth)|(two|three|five|seven)[\s-]+(third|fifth|sixth|eighth)s?)\b(?:\s+of)?(?:\s+an?\b)?/i,
    wordPart,
  ],
  [
    /^(?:an?\s+|one\s+|one-)?(half|quarter)(?:\s+(?:of\s+)?an?\b|-|\s+of\b|(?=\s|$))/i,
    (found) => word(found[1]),
  ],
  [new RegExp(`^(${FIGURE})\\b`, "i"), (found) => word(found[1])],
  [/^(?:a\s+)?(?:couple|pair)(?:\s+of)?\b/i, () => 2],
  [/^(?:a\s+)?dozen\b/i, () => 12],
  [/^an?\b(?!\s+(?:few|little|bit|touch|hint|lot)\b)/i, () => 1],
];

/** What may follow a number that is an amount; "2:1", "100-proof", "12%", "7-year" are not amounts. */
const NOT_AN_AMOUNT =
  /^\s?(?:%|°|:\s?\d|(?:-|\s)?(?:proof|years?|yrs?|yo|y\.o\.|abv|percent)\b|(?:st|nd|rd|th)(?![\p{L}\d_])|[-\s]?up\b)/iu;

/**
 * The amount that a text starts with, as people write it: figures, fractions, words, and ranges as their mean.
 *
 * Undefined when it starts with none. Throws RefusedLine for numbers that could be read two ways ("1,000").
 * "1-1/2 oz" → 1.5; "2-3 dashes" → 2.5 with range "2 to 3"; "half an ounce" → 0.5; "2:1 syrup" → undefined.
 */
export function readQuantity(text: string): Quantity | undefined {
  // The dairy, not an amount.
  if (/^half[\s-](?:and|&|n)[\s-]half\b/i.test(text)) return undefined;
  const found = readNumber(text);
  if (found === undefined) return undefined;
  const first = withoutRepeat(found);
  const between = /^\s*(?:-|to\b|or\b)\s*/i.exec(first.rest);
  const second = between === null ? undefined : readNumber(first.rest.slice(between[0].length));
  if (second === undefined) return { ...first, range: null };
  const width = second.amount / first.amount;
  if (!(width > 1 && width <= WIDEST_RANGE)) {
    throw new RefusedLine(
      `"${first.amount} to ${second.amount}" is no range to take a mean of: write one amount.`,
    );
  }
  return {
    amount: (first.amount + second.amount) / 2,
    range: `${plainNumber(first.amount)} to ${plainNumber(second.amount)}`,
    rest: second.rest,
  };
}

/** As `readQuantity`, but undefined also for a number that could be read two ways. */
export function quantityIn(text: string): Quantity | undefined {
  try {
    return readQuantity(text);
  } catch (error) {
    if (error instanceof RefusedLine) return undefined;
    throw error;
  }
}

/** "one (1) ounce" says its number twice. */
function withoutRepeat(found: Found): Found {
  const again = /^\s*\(\s*([^()]+?)\s*\)/.exec(found.rest);
  const repeated = again === null ? undefined : readNumber(again[1] ?? "");
  if (again === null || repeated?.rest !== "" || repeated.amount !== found.amount) return found;
  return { ...found, rest: found.rest.slice(again[0].length) };
}

function readNumber(text: string): Found | undefined {
  for (const [pattern, amountOf] of FORMS) {
    const found = pattern.exec(text);
    if (found === null) continue;
    const rest = text.slice(found[0].length);
    if (NOT_AN_AMOUNT.test(rest)) return undefined;
    const amount = amountOf(found);
    if (Number.isNaN(amount)) continue;
    refuseThousands(found[0], rest);
    return Number.isFinite(amount) && amount > 0 ? { amount, rest } : refuseNumber(found[0]);
  }
  return undefined;
}

function refuseNumber(written: string): never {
  throw new RefusedLine(`"${written}" is no amount: write a number above 0, as 1 1/2 or 0.75.`);
}

function refuseThousands(written: string, rest: string): void {
  const isGrouped = /^[1-9]\d{0,2},\d{3}$/.test(written);
  const mayBeGrouped = /^[1-9]\d{0,2}\.\d{3}$/.test(written) && /^\s?(?:ml|millili|g\b|gram)/i.test(rest);
  if (!isGrouped && !mayBeGrouped) return;
  const digits = written.replace(/[.,]/, "");
  throw new RefusedLine(`"${written}" can be read two ways: write ${digits}, or more or fewer decimals.`);
}

/** NaN where the fraction is not below 1, as in "1-3/2": then it is no mixed number. */
function mixed(found: RegExpExecArray): number {
  const [, whole, numerator, denominator] = found.map(Number);
  if (whole === undefined || numerator === undefined || denominator === undefined) return Number.NaN;
  return numerator < denominator ? whole + numerator / denominator : Number.NaN;
}

/** "11/2" is more likely a lost space than eleven halves. */
function fraction(found: RegExpExecArray): number {
  const [, numerator = "", denominator = ""] = found;
  if (numerator.length > 1 && Number(numerator) > Number(denominator) && denominator.length === 1) {
    throw new RefusedLine(
      `"${found[0]}" can be read two ways: write ${numerator[0]} ${numerator.slice(1)}/${denominator}, or a decimal.`,
    );
  }
  return Number(numerator) / Number(denominator);
}

/** "one and a half", "one and one-third" */
function wordMixed(found: RegExpExecArray): number {
  return wholeOf(found[1]) + 1 / part(found[2]);
}

/** "one and three-quarters", "one and half" */
function wordMixedThree(found: RegExpExecArray): number {
  return wholeOf(found[1]) + (found[4] === undefined ? 3 / part(found[3]) : 0.5);
}

/** "one third", "two-thirds" */
function wordPart(found: RegExpExecArray): number {
  return found[1] === undefined ? word(found[2]) / part(found[3]) : 1 / part(found[1]);
}

function wholeOf(text: string | undefined): number {
  return /^\d/.test(text ?? "") ? Number(text) : word(text);
}

function part(text: string | undefined): number {
  return PARTS[text?.toLowerCase() ?? ""] ?? Number.NaN;
}

function word(text: string | undefined): number {
  return WORDS[text?.toLowerCase() ?? ""] ?? Number.NaN;
}

/** A number without the noise of binary fractions: 0.1 + 0.2 → "0.3". */
function plainNumber(value: number): string {
  return String(Number(value.toPrecision(6)));
}
