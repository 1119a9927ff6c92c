import { instantSecondsOf, localSecondsOf } from "#engine/sales/read/clock.ts";
import { dayNumber, readMoment } from "#engine/sales/read/moment.ts";
import type { CellStyles } from "#engine/sales/read/plan.ts";
import { ByteDictionary } from "#engine/sales/read/regular/byte-dictionary.ts";
import type { RunningEvidence } from "#engine/sales/read/regular/evidence.ts";

const DAY_S = 86_400;
const ISO_DATE = /^\d{4}-\d\d-\d\d$/;
const NUMERIC_DATE = /^\d{1,4}([/.-])\d{1,2}\1\d{1,4}$/;
const decoder = new TextDecoder("utf-8", { ignoreBOM: true });

/** The dates of one column, each read once: its day since 1970, and how far local time is from UTC all around it. */
export class DateCells {
  readonly #dictionary = new ByteDictionary();
  /** By place; NaN for a cell that is no plain date. */
  readonly days: number[] = [];
  /** Seconds east of UTC, where they are the same from the day before to the day after; else NaN. */
  readonly offsets: number[] = [];
  readonly isIso: boolean[] = [];
  readonly texts: string[] = [];
  readonly #column: number;
  readonly #styles: CellStyles;
  readonly #timeZone: string;
  readonly #evidence: RunningEvidence;
  #last = new Uint8Array(0);
  #lastPlace = -1;

  constructor(column: number, styles: CellStyles, timeZone: string, evidence: RunningEvidence) {
    this.#column = column;
    this.#styles = styles;
    this.#timeZone = timeZone;
    this.#evidence = evidence;
  }

  /** The place of the date in some bytes; dates of a till come in long runs. */
  placeOf(bytes: Uint8Array, start: number, end: number): number {
    const last = this.#last;
    if (last.length === end - start) {
      let at = end - start - 1;
      while (at >= 0 && last[at] === bytes[start + at]) at -= 1;
      if (at < 0) return this.#lastPlace;
    }
    const size = this.#dictionary.size;
    const place = this.#dictionary.placeOf(bytes, start, end);
    if (place === size) this.#read(decoder.decode(bytes.subarray(start, end)));
    this.#last = bytes.slice(start, end);
    this.#lastPlace = place;
    return place;
  }

  /** Whether the date read before stands at `start` too, with something behind it. */
  sameAsLast(bytes: Uint8Array, start: number, end: number): boolean {
    const last = this.#last;
    const length = last.length;
    if (start + length >= end || length === 0) return false;
    for (let at = length - 1; at >= 0; at -= 1) if (last[at] !== bytes[start + at]) return false;
    return true;
  }

  get lastLength(): number {
    return this.#last.length;
  }

  get lastPlace(): number {
    return this.#lastPlace;
  }

  #read(cell: string): void {
    const text = cell.trim();
    const isPlain = ISO_DATE.test(text) || NUMERIC_DATE.test(text);
    const moment = isPlain ? readMoment(text) : undefined;
    const date = moment?.secondOfDay === null && moment.epochS === null ? moment.date : null;
    const day = date === null ? undefined : dayNumber(date, date.order ?? this.#styles.dateOrder);
    if (moment !== undefined && day !== undefined) this.#evidence.moment(this.#column, moment, text);
    this.days.push(day ?? Number.NaN);
    this.offsets.push(day === undefined ? Number.NaN : steadyOffset(day, this.#timeZone));
    this.isIso.push(ISO_DATE.test(text));
    this.texts.push(text);
  }
}

/** Seconds east of UTC around a day; NaN where clocks change near it. */
function steadyOffset(day: number, timeZone: string): number {
  const offsetAt = (second: number): number => localSecondsOf(second, timeZone) - second;
  const start = day * DAY_S;
  const offset = start - instantSecondsOf(start, timeZone);
  const around = [start - 2 * DAY_S, start - DAY_S, start, start + DAY_S, start + 2 * DAY_S];
  return around.every((second) => offsetAt(second) === offset) ? offset : Number.NaN;
}
