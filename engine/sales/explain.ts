import { currencyDigits } from "#engine/currency.ts";
import type { Facts } from "#engine/facts.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import { saleAsks } from "#engine/sales/asks.ts";
import { expectedUse } from "#engine/sales/expected-use.ts";
import type { DayTally } from "#engine/sales/packed/tally.ts";
import type { TextTable } from "#engine/sales/packed/texts.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { TallyUse } from "#engine/sales/tally-use.ts";
import { type BusinessDate, datesFrom, weekdayOf } from "#engine/time.ts";

/** What became of one business day: its tally before and after, and its lines where a count divides it. */
export type ChangedDay = {
  businessDate: BusinessDate;
  /** Whether the import changes anything of the day. */
  isMoved: boolean;
  before: DayTally;
  after: DayTally;
  divided: { before: readonly SaleGroup[]; after: readonly SaleGroup[] } | null;
};

/** What was sold on a day, from all files. */
export type DayTotal = { businessDate: BusinessDate; quantity: number };

export type UnlikeDay = { date: BusinessDate; quantity: number; usual: number };

/** An import explained. `net` and money shares are of the days the file touches, as they are after it. */
export type Explained = {
  /** Share of the sold quantity, and of the money, that the book knows; 1 where nothing was sold. */
  coverage: { quantity: number; money: number };
  /** Sold, but not known to the book; most money first, in major units. */
  unmapped: { ringName: string; quantity: number; net: number; reason: "unknown" | "no-version" }[];
  /** Items whose expected use moved, in base units, on the days that changed; the largest move against its size first. */
  moved: { item: string; base: BaseUnit; before: number; after: number }[];
  /** Days without sales between those with, on weekdays that otherwise have some. */
  daysMissing: BusinessDate[];
  /** Days far from what their weekday usually sells. */
  daysUnlike: UnlikeDay[];
};

/** Less than a tenth, or more than five times, of what the weekday usually sells. */
const UNLIKE_BELOW = 0.1;
const UNLIKE_ABOVE = 5;
/** Same weekdays on either side that say what is usual, and how many of them it takes. */
const WEEKDAYS_AROUND = 8;
const WEEKDAYS_LEAST = 3;

/** Explains an import from the days it touches and the totals of all days after it. */
export function explainImport(
  facts: Facts,
  changes: readonly ChangedDay[],
  texts: TextTable,
  totals: readonly DayTotal[],
): Explained {
  const { catalogue } = facts;
  const tallyUse = new TallyUse(catalogue, texts);
  const before = new Float64Array(tallyUse.items.length);
  const after = new Float64Array(tallyUse.items.length);
  for (const day of changes) {
    if (!day.isMoved || day.divided !== null) tallyUse.countDay(day.businessDate, day.after);
    else {
      tallyUse.addDay(day.businessDate, day.before, before);
      tallyUse.addDay(day.businessDate, day.after, after, true);
    }
  }
  const divided = changes.flatMap(({ divided }) => divided ?? []);
  addDivided(
    facts,
    divided.flatMap((day) => day.before),
    tallyUse.items,
    before,
  );
  addDivided(
    facts,
    divided.flatMap((day) => day.after),
    tallyUse.items,
    after,
  );
  return {
    coverage: coverageOf(tallyUse),
    unmapped: unmappedOf(tallyUse, 10 ** currencyDigits(catalogue.venue.currency)),
    moved: movedOf(facts, tallyUse.items, { before, after }),
    daysMissing: daysMissing(changes, totals),
    daysUnlike: daysUnlike(changes, totals),
  };
}

/** Days that a count divides are reckoned line by line, as their fruit is summed by part of the day. */
function addDivided(
  { catalogue, dividers }: Facts,
  groups: readonly SaleGroup[],
  items: readonly string[],
  use: Float64Array,
): void {
  if (groups.length === 0) return;
  const { asks } = saleAsks(catalogue, groups);
  const used = expectedUse(asks, { dividersOf: (item) => dividers.get(item) ?? [] });
  for (const [number, item] of items.entries())
    use[number] = (use[number] ?? 0) + (used.get(item)?.amount ?? 0);
}

function coverageOf({ coverage }: TallyUse): Explained["coverage"] {
  const share = (part: number, whole: number): number => (whole === 0 ? 1 : part / whole);
  return {
    quantity: share(coverage.mappedQuantity, coverage.quantity),
    money: share(coverage.mappedNetMinor, coverage.netMinor),
  };
}

function unmappedOf({ unmapped }: TallyUse, minor: number): Explained["unmapped"] {
  return [...unmapped.values()]
    .map(({ ringName, quantity, netMinor, reason }) => ({
      ringName,
      quantity,
      net: netMinor / minor,
      reason,
    }))
    .sort((one, other) => other.net - one.net || other.quantity - one.quantity);
}

/** Sums of parts differ in their last digits; that is no move. */
const NO_MOVE = 1e-9;

function movedOf(
  { catalogue }: Facts,
  items: readonly string[],
  use: { before: Float64Array; after: Float64Array },
): Explained["moved"] {
  const shareOf = ({ before, after }: { before: number; after: number }): number =>
    Math.abs(after - before) / Math.max(Math.abs(after), Math.abs(before));
  return items
    .map((item, number) => ({
      item,
      base: catalogue.items.get(item)?.base ?? ("each" as const),
      before: use.before[number] ?? 0,
      after: use.after[number] ?? 0,
    }))
    .filter((moved) => moved.after !== moved.before && shareOf(moved) > NO_MOVE)
    .sort((one, other) => shareOf(other) - shareOf(one));
}

/**
 * Days without sales between the day with sales before the file's first and the one after its last. A weekday on which the bar
 * never sold anything in all its files is its day off.
 */
function daysMissing(changes: readonly ChangedDay[], totals: readonly DayTotal[]): BusinessDate[] {
  const dates = changes.map(({ businessDate }) => businessDate).sort();
  const [first, last] = [dates[0], dates.at(-1)];
  if (first === undefined || last === undefined) return [];
  const sold = new Set(totals.map(({ businessDate }) => businessDate));
  const openOn = new Set([...sold].map(weekdayOf));
  const from =
    [...sold]
      .filter((date) => date < first)
      .sort()
      .at(-1) ?? first;
  const to = [...sold].filter((date) => date > last).sort()[0] ?? last;
  return datesFrom({ from, to }).filter((date) => !sold.has(date) && openOn.has(weekdayOf(date)));
}

/** The days of a file that sell far less or far more than the median of the same weekdays around them. */
function daysUnlike(changes: readonly ChangedDay[], totals: readonly DayTotal[]): UnlikeDay[] {
  const byWeekday = new Map<string, DayTotal[]>();
  for (const total of totals) {
    const weekday = weekdayOf(total.businessDate);
    const held = byWeekday.get(weekday);
    if (held === undefined) byWeekday.set(weekday, [total]);
    else held.push(total);
  }
  const touched = new Set(changes.map(({ businessDate }) => businessDate));
  return [...byWeekday.values()]
    .flatMap((days) =>
      days.flatMap(({ businessDate, quantity }, at): UnlikeDay[] => {
        if (!touched.has(businessDate)) return [];
        const around = [
          ...days.slice(Math.max(0, at - WEEKDAYS_AROUND), at),
          ...days.slice(at + 1, at + 1 + WEEKDAYS_AROUND),
        ];
        const usual = median(around.map((day) => day.quantity));
        const isUnlike = quantity < usual * UNLIKE_BELOW || quantity > usual * UNLIKE_ABOVE;
        return around.length >= WEEKDAYS_LEAST && usual > 0 && isUnlike
          ? [{ date: businessDate, quantity, usual }]
          : [];
      }),
    )
    .sort((one, other) => (one.date < other.date ? -1 : 1));
}

function median(values: number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  const middle = sorted.length / 2;
  return ((sorted[Math.ceil(middle) - 1] ?? 0) + (sorted[Math.floor(middle)] ?? 0)) / 2;
}
