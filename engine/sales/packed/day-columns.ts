/** What stands in a column where the file has nothing; it sorts before every value. */
export const NOTHING = Number.NEGATIVE_INFINITY;

/** Whole numbers that a code of digits holds exactly. */
const DIGITS_MOST = 15;
const PLAIN_NUMBER = /^(?:0|[1-9]\d{0,14})$/;
const ROWS_AT_FIRST = 512;
const RUN_MOST = 64;

/** One line of a day in numbers: seconds since 1970, texts by number, codes of check and line. */
export type PackedRow = {
  at: number;
  check: number;
  lineNo: number;
  ringName: number;
  modifiers: number;
  quantity: number;
  grossMinor: number;
  netMinor: number;
};

/**
 * The lines of one business day in columns, in any order until `sort`.
 *
 * What a line is, is all of its columns: two lines are equal if all their values are. A check or line number that is written
 * as a plain number is kept as that number; any other text has a negative code, −1 − its place in `codes`. Who rang a line
 * goes with it and is no part of what it is.
 */
export class DayColumns {
  count = 0;
  at = new Float64Array(ROWS_AT_FIRST);
  check = new Float64Array(ROWS_AT_FIRST);
  lineNo = new Float64Array(ROWS_AT_FIRST);
  ringName = new Int32Array(ROWS_AT_FIRST);
  modifiers = new Int32Array(ROWS_AT_FIRST);
  quantity = new Float64Array(ROWS_AT_FIRST);
  grossMinor = new Float64Array(ROWS_AT_FIRST);
  netMinor = new Float64Array(ROWS_AT_FIRST);
  /** Numbers of names, 0 for none; null while no line has one. */
  staff: Int32Array | null = null;
  readonly codes: string[] = [];
  readonly #codeOf = new Map<string, number>();
  #isSorted = true;
  #isInTime = true;

  /** Adds one line. The values are taken as they are: quantities without −0, money in whole minor units or NOTHING. */
  add(
    at: number,
    check: number,
    lineNo: number,
    ringName: number,
    modifiers: number,
    quantity: number,
    grossMinor: number,
    netMinor: number,
  ): void {
    const row = this.count;
    if (row === this.at.length) this.#grow();
    this.at[row] = at;
    this.check[row] = check;
    this.lineNo[row] = lineNo;
    this.ringName[row] = ringName;
    this.modifiers[row] = modifiers;
    this.quantity[row] = quantity;
    this.grossMinor[row] = grossMinor;
    this.netMinor[row] = netMinor;
    this.count = row + 1;
    if (row > 0 && this.#isInTime && !((this.at[row - 1] as number) < at)) {
      if (this.at[row - 1] !== at) this.#isInTime = false;
      if (this.#isSorted) this.#isSorted = this.#isInTime && this.compare(row - 1, row) <= 0;
    }
  }

  /** Says who rang the line that was added last, by the number of the name. */
  rungBy(staff: number): void {
    this.staff ??= new Int32Array(this.at.length);
    this.staff[this.count - 1] = staff;
  }

  /** Forgets all lines, to be filled anew. */
  clear(): void {
    this.count = 0;
    this.staff = null;
    this.codes.length = 0;
    this.#codeOf.clear();
    this.#isSorted = true;
    this.#isInTime = true;
  }

  /** The code of a check or line number as the file writes it; NOTHING for null. */
  codeOf(text: string | null): number {
    if (text === null) return NOTHING;
    if (text.length <= DIGITS_MOST && PLAIN_NUMBER.test(text)) return Number(text);
    const known = this.#codeOf.get(text);
    if (known !== undefined) return known;
    const code = -1 - this.codes.length;
    this.codes.push(text);
    this.#codeOf.set(text, code);
    return code;
  }

  codeText(code: number): string | null {
    if (code === NOTHING) return null;
    return code >= 0 ? String(code) : (this.codes[-1 - code] ?? "");
  }

  /** Puts the lines into the one order that depends on nothing but what they are. */
  sort(): void {
    if (this.#isSorted) return;
    this.#isSorted = true;
    if (this.#isInTime) {
      this.#sortRuns();
      return;
    }
    this.#isInTime = true;
    this.#sortAll();
  }

  /** Sorts the few lines of one second among themselves, where the seconds are in order. */
  #sortRuns(): void {
    for (let start = 0; start < this.count; ) {
      let end = start + 1;
      while (end < this.count && this.at[end] === this.at[start]) end += 1;
      // A run as long as a day has no seconds at all.
      if (end - start > RUN_MOST) {
        this.#sortAll();
        return;
      }
      for (let row = start + 1; row < end; row += 1)
        for (let place = row; place > start && this.compare(place - 1, place) > 0; place -= 1)
          this.#swap(place - 1, place);
      start = end;
    }
  }

  #sortAll(): void {
    const order = Array.from({ length: this.count }, (_, row) => row);
    order.sort((one, other) => this.compare(one, other));
    this.at = permuted(this.at, order);
    this.check = permuted(this.check, order);
    this.lineNo = permuted(this.lineNo, order);
    this.quantity = permuted(this.quantity, order);
    this.grossMinor = permuted(this.grossMinor, order);
    this.netMinor = permuted(this.netMinor, order);
    this.ringName = permuted(this.ringName, order);
    this.modifiers = permuted(this.modifiers, order);
    if (this.staff !== null) this.staff = permuted(this.staff, order);
  }

  #swap(one: number, other: number): void {
    swap(this.check, one, other);
    swap(this.lineNo, one, other);
    swap(this.quantity, one, other);
    swap(this.grossMinor, one, other);
    swap(this.netMinor, one, other);
    swap(this.ringName, one, other);
    swap(this.modifiers, one, other);
    if (this.staff !== null) swap(this.staff, one, other);
  }

  /** Below 0 when one line comes before another, 0 when they are equal. */
  compare(one: number, other: number): number {
    return compareRows(this, one, this, other);
  }

  /** Adds a line of another day's columns. */
  addFrom(other: DayColumns, row: number): void {
    const code = (value: number): number => (value < 0 ? this.codeOf(other.codeText(value)) : value);
    this.add(
      other.at[row] as number,
      code(other.check[row] as number),
      code(other.lineNo[row] as number),
      other.ringName[row] as number,
      other.modifiers[row] as number,
      other.quantity[row] as number,
      other.grossMinor[row] as number,
      other.netMinor[row] as number,
    );
    const staff = other.staff?.[row] ?? 0;
    if (staff !== 0) this.rungBy(staff);
  }

  #grow(): void {
    this.at = grown(this.at);
    this.check = grown(this.check);
    this.lineNo = grown(this.lineNo);
    this.ringName = grown(this.ringName);
    this.modifiers = grown(this.modifiers);
    this.quantity = grown(this.quantity);
    this.grossMinor = grown(this.grossMinor);
    this.netMinor = grown(this.netMinor);
    if (this.staff !== null) this.staff = grown(this.staff);
  }
}

/** The order of lines: by time, check, line number, ring name, modifiers, quantity, gross, net. */
export function compareRows(left: DayColumns, one: number, right: DayColumns, other: number): number {
  return (
    byNumber(left.at[one], right.at[other]) ||
    byCode(left, left.check[one], right, right.check[other]) ||
    byCode(left, left.lineNo[one], right, right.lineNo[other]) ||
    byNumber(left.ringName[one], right.ringName[other]) ||
    byNumber(left.modifiers[one], right.modifiers[other]) ||
    byNumber(left.quantity[one], right.quantity[other]) ||
    byNumber(left.grossMinor[one], right.grossMinor[other]) ||
    byNumber(left.netMinor[one], right.netMinor[other])
  );
}

function byNumber(one = 0, other = 0): number {
  return one < other ? -1 : one > other ? 1 : 0;
}

/** Nothing first, then plain numbers by size, then texts by their letters. */
function byCode(left: DayColumns, one = NOTHING, right: DayColumns, other = NOTHING): number {
  const isText = one < 0 && one !== NOTHING;
  const isOtherText = other < 0 && other !== NOTHING;
  if (!isText && !isOtherText) return byNumber(one, other);
  if (isText !== isOtherText) return isText ? 1 : -1;
  const [text, otherText] = [left.codeText(one) ?? "", right.codeText(other) ?? ""];
  return text < otherText ? -1 : text > otherText ? 1 : 0;
}

function swap(column: Float64Array | Int32Array, one: number, other: number): void {
  const held = column[one] as number;
  column[one] = column[other] as number;
  column[other] = held;
}

function grown<T extends Float64Array | Int32Array>(column: T): T {
  const larger = new (column.constructor as new (length: number) => T)(column.length * 2);
  larger.set(column);
  return larger;
}

function permuted<T extends Float64Array | Int32Array>(column: T, order: readonly number[]): T {
  const sorted = new (column.constructor as new (length: number) => T)(order.length);
  for (let row = 0; row < order.length; row += 1) sorted[row] = column[order[row] as number] as number;
  return sorted;
}
