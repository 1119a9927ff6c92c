import { decimalMarkOf } from "#db/book/decimal.ts";
import { quote } from "#db/book/quote.ts";
import { readAmount } from "#engine/measure/amount.ts";
import { harmlessText, textOfCell } from "#engine/sheet-text.ts";

/** What a cell needs to know of its book to be read or written. */
export type CellContext = {
  /** Whether the sheet's numbers have a decimal comma. */
  decimalComma: boolean;
  timeZone: string;
  /** Digits after the point in the venue's money. */
  moneyDigits: number;
};

/** A cell that cannot be read; the message says what is wrong with it and how to write it. */
export class WrongCell extends Error {
  override name = "WrongCell";
}

/** What a name in a cell stands for, where it must be one that another sheet defines. */
export type Refers = "item" | "drink" | "supplier";

/** How one kind of cell is read and written. `read` throws WrongCell. */
export type Cell<T> = {
  read(text: string, context: CellContext): T;
  write(value: T, context: CellContext): string;
  /** What an empty cell stands for; a cell without it must be filled in. */
  empty?: { value: T };
  /** The numbers in a cell, to tell a decimal point from a decimal comma. */
  numbers?(text: string): string[];
  refers?: Refers;
};

/** Numbers from here on are slips of the keyboard or of a program; no bar has a thousand billion of anything. */
const TOO_LARGE = 1e12;
const TEXT_MOST = 100_000;

/** A name as written, without outer spaces. */
export function name(refers?: Refers): Cell<string> {
  const cell: Cell<string> = { read: (text) => readText(text.trim()), write: harmlessText };
  return refers === undefined ? cell : { ...cell, refers };
}

/** A short text, without outer spaces; may be empty. */
export const shortText: Cell<string> = { ...name(), empty: { value: "" } };

/** A longer text exactly as written, line breaks and all; may be empty. */
export const longText: Cell<string> = {
  read: readText,
  write: harmlessText,
  empty: { value: "" },
};

/** A text without the apostrophe that keeps spreadsheets from running it. Throws WrongCell. */
function readText(text: string): string {
  return shortEnough(textOfCell(text));
}

function shortEnough(text: string): string {
  if (text.length > TEXT_MOST) throw new WrongCell(`the text is ${text.length} characters long; shorten it`);
  return text;
}

/** The same cell, which may be left empty. */
export function optional<T>(cell: Cell<T>): Cell<T | null> {
  return {
    ...cell,
    write: (value, context) => (value === null ? "" : cell.write(value, context)),
    empty: { value: null },
  };
}

/** The same cell, which when empty stands for a value. */
export function otherwise<T>(cell: Cell<T>, value: T): Cell<T> {
  return { ...cell, empty: { value } };
}

/** One of a few words, whatever their case. */
export function oneOf<T extends string>(words: readonly T[]): Cell<T> {
  return {
    read: (text) => {
      const found = words.find((word) => word.toLowerCase() === text.trim().toLowerCase());
      if (found === undefined) throw new WrongCell(`${quote(text)} is none of ${words.join(", ")}`);
      return found;
    },
    write: (value) => value,
  };
}

const YES = ["yes", "y", "true", "1"];
const NO = ["no", "n", "false", "0"];

export const yesNo: Cell<boolean> = {
  read: (text) => {
    const word = text.trim().toLowerCase();
    if (YES.includes(word)) return true;
    if (NO.includes(word)) return false;
    throw new WrongCell(`${quote(text)} is neither yes nor no`);
  },
  write: (value) => (value ? "yes" : "no"),
};

/** What a number must be like, and how to say so. */
export type NumberRule = { holds(value: number): boolean; says: string };

export const ABOVE_ZERO: NumberRule = { holds: (value) => value > 0, says: "must be more than 0" };
export const NOT_NEGATIVE: NumberRule = { holds: (value) => value >= 0, says: "must not be negative" };
export const ANY_NUMBER: NumberRule = { holds: () => true, says: "" };
export const PERCENT: NumberRule = {
  holds: (value) => value >= 0 && value <= 100,
  says: "must lie between 0 and 100",
};
export const SHARE: NumberRule = {
  holds: (value) => value >= 0 && value <= 1,
  says: "must lie between 0 (empty) and 1 (full)",
};
export const CHANCE: NumberRule = {
  holds: (value) => value > 0 && value < 1,
  says: "must lie between 0 and 1, as 0.95",
};
export const WHOLE_ABOVE_ZERO: NumberRule = {
  holds: (value) => value > 0 && Number.isInteger(value),
  says: "must be a whole number, 1 or more",
};

/** A number as people write it: 0.75, 3/4, ¾, 1 1/2, and 0,75 in a sheet with decimal commas. */
export function number(rule: NumberRule): Cell<number> {
  return {
    read: (text, context) => readNumber(text, rule, context),
    write: String,
    numbers: (text) => [text],
  };
}

/** Several numbers with `;` between them; none when empty. */
export function numberList(rule: NumberRule): Cell<number[]> {
  return {
    read: (text, context) => split(text, ";").map((part) => readNumber(part, rule, context)),
    write: (values) => values.map(String).join(";"),
    empty: { value: [] },
    numbers: (text) => text.split(";"),
  };
}

/** Money in major units as whole minor units. 12.50 in EUR → 1250. */
export const money: Cell<number> = {
  read: (text, context) => {
    const major = readNumber(text, NOT_NEGATIVE, context);
    const scaled = major * 10 ** context.moneyDigits;
    const minor = Math.round(scaled);
    // 12.35 × 100 is 1234.9999999999998: what a double cannot hold is no decimal that someone wrote.
    if (Math.abs(scaled - minor) > Math.max(1e-6, scaled * Number.EPSILON)) {
      throw new WrongCell(
        `${quote(text)} has more than the ${context.moneyDigits} decimals of the venue's money`,
      );
    }
    return minor;
  },
  write: (minor, { moneyDigits }) => majorText(minor, moneyDigits),
  numbers: (text) => [text],
};

/** Minor units as a decimal text in major units. (1250, 2) → "12.50"; (1250, 0) → "1250". */
export function majorText(minor: number, digits: number): string {
  if (digits === 0) return String(minor);
  const padded = String(minor).padStart(digits + 1, "0");
  return `${padded.slice(0, -digits)}.${padded.slice(-digits)}`;
}

function readNumber(text: string, rule: NumberRule, { decimalComma }: CellContext): number {
  const written = text.trim();
  const value = decimalComma && written.includes(".") ? undefined : readAmount(written, { decimalComma });
  if (value === undefined) throw new WrongCell(notANumber(written, decimalComma));
  if (Math.abs(value) >= TOO_LARGE) throw new WrongCell(`${quote(written)} is too large to be meant`);
  if (!rule.holds(value)) throw new WrongCell(`${quote(written)} ${rule.says}`);
  return value === 0 ? 0 : value;
}

function notANumber(written: string, decimalComma: boolean): string {
  if (/^[+-]?[\d.]+e[+-]?\d+$/i.test(written)) return `${quote(written)} is too large to be meant`;
  if (/^[+-]?[\d.,\s]+$/.test(written) && /[.,]/.test(written)) {
    if (decimalComma) {
      return `${quote(written)} has a point, where the sheet's other numbers have a decimal comma`;
    }
    return decimalMarkOf([written]) === "comma"
      ? `${quote(written)} has a comma, where the sheet's other numbers have a decimal point`
      : `${quote(written)} can be read two ways; write it without a mark between thousands`;
  }
  return `${quote(written)} is no number; write it like 0.75, 3/4 or 1 1/2`;
}

/** Several texts with a mark between them; none when empty. */
export function textList(mark: ";" | "+"): Cell<string[]> {
  return {
    read: (text) => split(shortEnough(text), mark).map(textOfCell),
    write: (values) => values.map(harmlessText).join(mark),
    empty: { value: [] },
  };
}

function split(text: string, mark: string): string[] {
  return text
    .split(mark)
    .map((part) => part.trim())
    .filter((part) => part !== "");
}
