import { type DayColumns, NOTHING } from "#engine/sales/packed/day-columns.ts";
import type { SalesPacker } from "#engine/sales/packed/packed-sales.ts";
import { Checks } from "#engine/sales/read/child-rows.ts";
import { dayEndsSeconds, instantSecondsOf, localSecondsOf } from "#engine/sales/read/clock.ts";
import { type FlatLayout, modifierText, nothingRead, type Reading } from "#engine/sales/read/flat-layout.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";
import { isEmptyMoney, readQuantity } from "#engine/sales/read/number.ts";
import { readRow } from "#engine/sales/read/read-flat.ts";
import { DateCells } from "#engine/sales/read/regular/date-cells.ts";
import { RunningEvidence } from "#engine/sales/read/regular/evidence.ts";
import { RowsBelong } from "#engine/sales/read/regular/hand-over.ts";
import { NumberCells } from "#engine/sales/read/regular/number-cells.ts";
import { plainCode, plainTime } from "#engine/sales/read/regular/plain-cells.ts";
import type { RowsPlan } from "#engine/sales/read/regular/plan.ts";
import { RowCells } from "#engine/sales/read/regular/rows.ts";
import { cellText, TextCells } from "#engine/sales/read/regular/text-cells.ts";
import { watchKind } from "#engine/sales/read/regular/watch-kind.ts";

const DAY_S = 86_400;
const [SPACE, LETTER_T, LETTER_Z, PLUS, MINUS, COLON, POINT] = [32, 84, 90, 43, 45, 58, 46];
const [SALE, VOID, NOT_A_SALE, ODD] = [0, 1, 2, 3];
const CHILD_MARK = /^\s*(?:\+|↳|→|>|»)|^(?:\s{2,}|\t|\u00a0+|\u3000)(?=\S)/u;
const ODD_NAME = -1;
const NO_COLUMN = -1;
const WORDS_WATCHED = 500;

/**
 * Reads the rows of a regular file from their bytes.
 *
 * A row in plain writing becomes a line without a text being made of it. Any other row is read as texts by the rules of the
 * general reader, so that the lines are the same. Throws RowsBelong where rows belong to each other.
 */
export class RegularReader {
  readonly reading: Reading = nothingRead();
  readonly evidence: RunningEvidence;
  readonly #cells: RowCells;
  readonly #layout: FlatLayout;
  readonly #packer: SalesPacker;
  readonly #width: number;
  readonly #firstRow: number;
  readonly #dayEndsS: number;
  readonly #timeZone: string;
  readonly #parents = new NoParents();
  readonly #isDateStated: boolean;
  #row = 0;

  readonly #when: DateCells | undefined;
  readonly #date: DateCells | undefined;
  readonly #stated: DateCells | undefined;
  readonly #quantity: NumberCells | undefined;
  readonly #gross: NumberCells | undefined;
  readonly #net: NumberCells | undefined;
  readonly #discount: NumberCells | undefined;
  readonly #items: TextCells;
  readonly #kinds: TextCells | undefined;
  readonly #staff: { column: number; cells: TextCells } | undefined;
  readonly #modifiers: { column: number; cells: TextCells }[];
  readonly #onlyModifiers: { column: number; cells: TextCells } | undefined;
  /** The number of the text of no modifiers. */
  readonly #noModifiers: number;
  readonly #joined = new Map<string, number>();
  readonly #watched: { column: number; cells: TextCells }[];
  readonly #whenColumn: number;
  readonly #dateColumn: number;
  readonly #statedColumn: number;
  readonly #timeColumn: number;
  readonly #itemColumn: number;
  readonly #checkColumn: number;
  readonly #lineColumn: number;
  readonly #kindColumn: number;
  /** What `#placeWhen` and its like found, beside the business day they give. */
  #at = NOTHING;
  #sawMidnight = false;
  #sawOther = false;

  constructor(plan: RowsPlan, packer: SalesPacker, currencyDigits: number) {
    const { layout, styles } = plan;
    const { map, clock } = layout;
    this.#layout = layout;
    this.#packer = packer;
    this.#cells = new RowCells(plan.delimiter);
    this.#width = layout.headings.length;
    this.#firstRow = plan.understood.firstRow;
    this.#dayEndsS = dayEndsSeconds(clock.dayEnds);
    this.#timeZone = clock.timeZone;
    this.evidence = new RunningEvidence(map, this.#dayEndsS);
    this.#isDateStated = styles.isDateBusinessDate;
    const dates = (column: number | undefined): DateCells | undefined =>
      column === undefined ? undefined : new DateCells(column, styles, clock.timeZone, this.evidence);
    this.#when = dates(map.when);
    this.#date = dates(map.date);
    this.#stated = styles.isDateBusinessDate ? this.#date : dates(map.businessDate);
    this.#whenColumn = map.when ?? NO_COLUMN;
    this.#dateColumn = map.date ?? NO_COLUMN;
    this.#statedColumn = (styles.isDateBusinessDate ? map.date : map.businessDate) ?? NO_COLUMN;
    this.#timeColumn = map.time ?? NO_COLUMN;
    this.#itemColumn = map.item ?? NO_COLUMN;
    this.#checkColumn = map.check ?? NO_COLUMN;
    this.#lineColumn = map.lineNo ?? NO_COLUMN;
    this.#kindColumn = map.kind ?? NO_COLUMN;
    const numbers = (column: number | undefined, isMoney: boolean): NumberCells | undefined => {
      if (column === undefined) return undefined;
      const mark = styles.decimals.get(column) ?? styles.decimal;
      const read = (cell: string): number | null | undefined =>
        isMoney
          ? isEmptyMoney(cell)
            ? null
            : layout.minorUnits[mark](cell)
          : readQuantity(cell.trim(), mark);
      return new NumberCells(column, { mark, digits: isMoney ? currencyDigits : null }, read, this.evidence);
    };
    this.#quantity = numbers(map.quantity, false);
    this.#gross = numbers(map.gross, true);
    this.#net = numbers(map.net, true);
    this.#discount = map.net === undefined ? numbers(map.discount, true) : undefined;
    this.#items = new TextCells((cell) => this.#itemOf(cell));
    this.#kinds = map.kind === undefined ? undefined : new TextCells((cell) => this.#kindCode(cell));
    this.#staff =
      map.staff === undefined
        ? undefined
        : { column: map.staff, cells: new TextCells((cell) => this.#staffOf(cell)) };
    this.#modifiers = map.modifiers.map((column) => ({
      column,
      cells: new TextCells((cell) => packer.texts.numberOf(modifierText(cell))),
    }));
    this.#onlyModifiers = this.#modifiers.length === 1 ? this.#modifiers[0] : undefined;
    this.#noModifiers = packer.texts.numberOf("");
    this.#watched = plan.watched.map((column) => ({
      column,
      cells: new TextCells((cell) => watchKind(cell, layout.headings[column] ?? "")),
    }));
  }

  /**
   * Reads all rows that end before `length`, and gives where the first one starts that does not. bytes[length] must be a line
   * feed.
   */
  take(bytes: Uint8Array, from: number, length: number): number {
    let at = from;
    while (at < length) {
      const next = this.#cells.find(bytes, at, length);
      if (next < 0) return at;
      if (this.#row >= this.#firstRow && !this.#readPlain(bytes)) this.#readTexts(bytes);
      this.#row += 1;
      at = next;
    }
    return at;
  }

  /** Hands what was seen of the times to the evidence; to be called after the last row. */
  finish(): void {
    const column = this.#whenColumn;
    const moment = { date: null, offsetS: null, epochS: null };
    if (this.#sawMidnight) this.evidence.moment(column, { ...moment, secondOfDay: 0 }, "");
    if (this.#sawOther) this.evidence.moment(column, { ...moment, secondOfDay: 1 }, "");
  }

  /** Reads the row as a line if all it says is in plain writing. */
  #readPlain(bytes: Uint8Array): boolean {
    const { starts, ends, doubled, count } = this.#cells;
    if (count !== this.#width) return false;
    if (this.#watched.length > 0) this.#watch(bytes);
    let kind = SALE;
    if (this.#kinds !== undefined) {
      const column = this.#kindColumn;
      kind = this.#kinds.valueOf(
        bytes,
        starts[column] as number,
        ends[column] as number,
        doubled[column] === 1,
      );
      if (kind === NOT_A_SALE || kind === ODD) return false;
    }
    const item = this.#itemColumn;
    const ringName = this.#items.valueOf(
      bytes,
      starts[item] as number,
      ends[item] as number,
      doubled[item] === 1,
    );
    if (ringName === ODD_NAME) return false;
    let quantity = 1;
    if (this.#quantity !== undefined) {
      const { column } = this.#quantity;
      quantity = this.#quantity.valueOf(bytes, starts[column] as number, ends[column] as number);
      if (Number.isNaN(quantity) || quantity === NOTHING || quantity > 1_000_000 || quantity < -1_000_000)
        return false;
      if (kind === VOID && quantity > 0) quantity = -quantity;
    } else if (kind !== SALE) return false;
    let gross = NOTHING;
    if (this.#gross !== undefined) {
      const { column } = this.#gross;
      gross = this.#gross.valueOf(bytes, starts[column] as number, ends[column] as number);
      if (Number.isNaN(gross)) return false;
    }
    let net = NOTHING;
    if (this.#net !== undefined) {
      const { column } = this.#net;
      net = this.#net.valueOf(bytes, starts[column] as number, ends[column] as number);
      if (Number.isNaN(net)) return false;
    } else if (this.#discount !== undefined) {
      const { column } = this.#discount;
      const discount = this.#discount.valueOf(bytes, starts[column] as number, ends[column] as number);
      if (Number.isNaN(discount)) return false;
      if (gross !== NOTHING && discount !== NOTHING) net = gross - Math.sign(gross) * Math.abs(discount);
    }
    if (this.#quantity === undefined) {
      const money = net !== NOTHING ? net : gross;
      quantity = money !== NOTHING && money < 0 ? -1 : 1;
    }
    if (quantity < 0) {
      if (gross > 0) gross = -gross;
      if (net > 0) net = -net;
    }
    const day = this.#place(bytes);
    if (Number.isNaN(day)) return false;
    const modifiers = this.#modifiersOf(bytes);
    const columns = this.#packer.day(day);
    columns.add(
      this.#at,
      this.#codeOf(bytes, this.#checkColumn, columns),
      this.#codeOf(bytes, this.#lineColumn, columns),
      ringName,
      modifiers,
      quantity + 0,
      gross + 0,
      net + 0,
    );
    if (this.#staff !== undefined) {
      const { column, cells } = this.#staff;
      const staff = cells.valueOf(
        bytes,
        starts[column] as number,
        ends[column] as number,
        doubled[column] === 1,
      );
      if (staff !== 0) columns.rungBy(staff);
    }
    this.reading.linesRead += 1;
    return true;
  }

  #watch(bytes: Uint8Array): void {
    const { starts, ends, doubled } = this.#cells;
    for (const { column, cells } of this.#watched)
      if (cells.size <= WORDS_WATCHED)
        cells.valueOf(bytes, starts[column] as number, ends[column] as number, doubled[column] === 1);
  }

  /** The business day of the row, with its instant left in `#at`; NaN where that is not plainly written. */
  #place(bytes: Uint8Array): number {
    const { starts, ends } = this.#cells;
    let stated = Number.NaN;
    if (this.#stated !== undefined) {
      const column = this.#statedColumn;
      const start = starts[column] as number;
      const end = ends[column] as number;
      if (start !== end) {
        stated = this.#stated.days[this.#stated.placeOf(bytes, start, end)] as number;
        if (Number.isNaN(stated)) return Number.NaN;
      }
    }
    if (this.#when !== undefined) return this.#placeWhen(bytes, stated);
    if (this.#timeColumn >= 0) return this.#placeTime(bytes, stated);
    this.#at = NOTHING;
    if (this.#date === undefined || this.#isDateStated) return stated;
    const column = this.#dateColumn;
    const start = starts[column] as number;
    const end = ends[column] as number;
    if (start === end) return Number.NaN;
    const day = this.#date.days[this.#date.placeOf(bytes, start, end)] as number;
    return Number.isNaN(day) || Number.isNaN(stated) ? day : stated;
  }

  /** Date and time in one cell: "2025-03-01 21:05:30", with or without a zone; "01/03/2025 9:05 PM". */
  #placeWhen(bytes: Uint8Array, stated: number): number {
    const when = this.#when as DateCells;
    const column = this.#whenColumn;
    const start = this.#cells.starts[column] as number;
    const end = this.#cells.ends[column] as number;
    let dateEnds = start + when.lastLength;
    let place = when.lastPlace;
    const isSame =
      when.sameAsLast(bytes, start, end) && (bytes[dateEnds] === SPACE || bytes[dateEnds] === LETTER_T);
    if (!isSame) {
      dateEnds = start + 6;
      while (dateEnds < end && bytes[dateEnds] !== SPACE && bytes[dateEnds] !== LETTER_T) dateEnds += 1;
      if (dateEnds > end) return Number.NaN;
      place = when.placeOf(bytes, start, dateEnds);
    }
    const day = when.days[place] as number;
    if (Number.isNaN(day)) return Number.NaN;
    if (dateEnds === end) {
      this.#at = NOTHING;
      return !Number.isNaN(stated) ? stated : day;
    }
    const isIso = when.isIso[place] === true;
    if (bytes[dateEnds] === LETTER_T && !isIso) return Number.NaN;
    let timeEnds = end;
    let offset = Number.NaN;
    if (isIso && end - dateEnds > 9) {
      timeEnds = dateEnds + 9;
      offset = zoneIn(bytes, timeEnds, end);
      // Neither a zone nor nothing after the seconds: perhaps " PM"; the general reader sees.
      if (offset === ODD_ZONE) return Number.NaN;
    }
    const second = plainTime(bytes, dateEnds + 1, timeEnds);
    if (Number.isNaN(second)) return Number.NaN;
    if (second === 0 && Number.isNaN(offset)) this.#sawMidnight = true;
    else this.#sawOther = true;
    return this.#wallClock(day, second, offset, stated, when.offsets[place] as number);
  }

  /** Date and time in two cells, or a business date and a time of day. */
  #placeTime(bytes: Uint8Array, stated: number): number {
    const { starts, ends } = this.#cells;
    const second = plainTime(bytes, starts[this.#timeColumn] as number, ends[this.#timeColumn] as number);
    if (Number.isNaN(second)) return Number.NaN;
    if (this.#date !== undefined) {
      const column = this.#dateColumn;
      const start = starts[column] as number;
      const end = ends[column] as number;
      if (start === end) return Number.NaN;
      const place = this.#date.placeOf(bytes, start, end);
      const day = this.#date.days[place] as number;
      if (Number.isNaN(day)) return Number.NaN;
      this.evidence.night(this.#date.texts[place] as string, second);
      if (!this.#isDateStated)
        return this.#wallClock(day, second, Number.NaN, stated, this.#date.offsets[place] as number);
    }
    if (Number.isNaN(stated)) return Number.NaN;
    const day = second < this.#dayEndsS ? stated + 1 : stated;
    return this.#wallClock(day, second, Number.NaN, stated, Number.NaN);
  }

  #wallClock(day: number, second: number, written: number, stated: number, steady: number): number {
    const local = day * DAY_S + second;
    const offset = !Number.isNaN(written) ? written : (this.#layout.headingOffsetS ?? Number.NaN);
    if (!Number.isNaN(offset)) {
      this.#at = local - offset;
      if (!Number.isNaN(stated)) return stated;
      return Math.floor((localSecondsOf(this.#at, this.#timeZone) - this.#dayEndsS) / DAY_S);
    }
    this.#at = !Number.isNaN(steady) ? local - steady : instantSecondsOf(local, this.#timeZone);
    if (!Number.isNaN(stated)) return stated;
    return second < this.#dayEndsS ? day - 1 : day;
  }

  #codeOf(bytes: Uint8Array, column: number, columns: DayColumns): number {
    if (column < 0) return NOTHING;
    const { starts, ends, doubled } = this.#cells;
    const start = starts[column] as number;
    const end = ends[column] as number;
    const code = plainCode(bytes, start, end);
    if (!Number.isNaN(code)) return code;
    const text = cellText(bytes, start, end, doubled[column] === 1).trim();
    return columns.codeOf(text === "" ? null : text);
  }

  #modifiersOf(bytes: Uint8Array): number {
    const { starts, ends, doubled } = this.#cells;
    const only = this.#onlyModifiers;
    if (only !== undefined) {
      const { column } = only;
      const start = starts[column] as number;
      const end = ends[column] as number;
      return start === end ? this.#noModifiers : only.cells.valueOf(bytes, start, end, doubled[column] === 1);
    }
    if (this.#modifiers.length === 0) return this.#noModifiers;
    const numberIn = ({ column, cells }: { column: number; cells: TextCells }): number =>
      cells.valueOf(bytes, starts[column] as number, ends[column] as number, doubled[column] === 1);
    const { texts } = this.#packer;
    const numbers = this.#modifiers.map(numberIn);
    const key = numbers.join(" ");
    const known = this.#joined.get(key);
    if (known !== undefined) return known;
    const words = numbers.map((number) => texts.textOf(number)).filter((text) => text !== "");
    const joined = texts.numberOf(words.join("; "));
    this.#joined.set(key, joined);
    return joined;
  }

  /** Reads the row by the rules of the general reader. */
  #readTexts(bytes: Uint8Array): void {
    const { starts, ends, doubled, count } = this.#cells;
    const row: string[] = [];
    for (let cell = 0; cell < count; cell += 1)
      row.push(cellText(bytes, starts[cell] as number, ends[cell] as number, doubled[cell] === 1));
    this.evidence.row(row);
    for (const { column } of this.#watched) watchKind(row[column] ?? "", this.#layout.headings[column] ?? "");
    const item = row[this.#itemColumn] ?? "";
    if (CHILD_MARK.test(item)) throw new RowsBelong("A name is marked as a child of the row above.");
    this.#parents.forgetLast();
    const outcome = readRow(row, this.#layout, this.#parents, this.reading);
    if (outcome === "skip") this.reading.rowsSkipped += 1;
    else if (outcome === "child") throw new RowsBelong("A row belongs to the row above.");
    else if (typeof outcome === "string") this.reading.refused.push({ row: this.#row + 1, reason: outcome });
    else {
      this.#packer.addLine(outcome);
      this.reading.linesRead += 1;
    }
  }

  #itemOf(cell: string): number {
    if (CHILD_MARK.test(cell)) throw new RowsBelong("A name is marked as a child of the row above.");
    const name = cell.trim().normalize("NFC");
    return name === "" ? ODD_NAME : this.#packer.texts.numberOf(name);
  }

  #staffOf(cell: string): number {
    const name = modifierText(cell).normalize("NFC");
    return name === "" ? 0 : this.#packer.staff.numberOf(name);
  }

  #kindCode(cell: string): number {
    const kind = this.#layout.readKind(cell);
    return kind === "sale" ? SALE : kind === "void" ? VOID : kind === "not a sale" ? NOT_A_SALE : ODD;
  }
}

const ODD_ZONE = Number.POSITIVE_INFINITY;

/** Seconds east of UTC of "Z", "+02:00" or "+0200" after the seconds, fractions of which are passed over; NaN without one. */
function zoneIn(bytes: Uint8Array, from: number, end: number): number {
  let at = from;
  if (bytes[at] === POINT) {
    at += 1;
    const first = at;
    while (at < end && isDigit(bytes[at])) at += 1;
    if (at === first || at - first > 9) return ODD_ZONE;
  }
  if (at === end) return Number.NaN;
  if (bytes[at] === LETTER_Z && at + 1 === end) return 0;
  if (bytes[at] !== PLUS && bytes[at] !== MINUS) return ODD_ZONE;
  const hours = twoDigits(bytes, at + 1);
  const minutesAt = bytes[at + 3] === COLON ? at + 4 : at + 3;
  if (minutesAt + 2 !== end) return ODD_ZONE;
  const size = hours * 3600 + twoDigits(bytes, minutesAt) * 60;
  if (Number.isNaN(size)) return ODD_ZONE;
  return bytes[at] === MINUS ? -size : size;
}

function twoDigits(bytes: Uint8Array, at: number): number {
  const [tens, ones] = [bytes[at], bytes[at + 1]];
  return isDigit(tens) && isDigit(ones) ? ((tens as number) - 48) * 10 + (ones as number) - 48 : Number.NaN;
}

function isDigit(byte = 0): boolean {
  return byte >= 48 && byte <= 57;
}

/** No row belongs to another; the moment one asks for the row it belongs to, the file needs another reader. */
class NoParents extends Checks {
  #wasAsked = false;

  constructor() {
    super(false);
  }

  override forgetLast(): void {
    this.#wasAsked = false;
  }

  /** Asked once to see whether a bare name could belong to something, and again only if it does. */
  override last(): SaleLine {
    if (this.#wasAsked) throw new RowsBelong("A row belongs to the row above.");
    this.#wasAsked = true;
    return SOME_LINE;
  }

  override find(): SaleLine {
    throw new RowsBelong("A row names the row it belongs to.");
  }
}

const SOME_LINE: SaleLine = {
  businessDate: "1970-01-01",
  at: "1970-01-01T00:00:00Z",
  ringName: "",
  modifiers: "",
  quantity: 1,
  grossMinor: null,
  netMinor: null,
  check: "",
  lineNo: null,
};
