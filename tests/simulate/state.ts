import type { Board } from "./board.ts";
import { dateAfter, WEEKDAY_NAMES } from "./calendar.ts";
import type { Catalogue, Day, SimItem } from "./catalogue.ts";
import type { Fault, Planted, Plantings } from "./faults.ts";
import type { MeanUse } from "./mean-use.ts";
import type { Random } from "./random.ts";
import type { Stockroom } from "./stockroom.ts";

/** Standard deviations of what staff read, weigh, pour and press; the same block stands in venue.json. */
export type Noise = {
  reading: number;
  scaleG: number;
  pourJigger: number;
  pourFree: number;
  yield: number;
  ml: number;
  each: number;
};

export type Cell = string | number;
export type Row = Record<string, Cell>;

/** What the bar's people write down as the weeks pass. */
export type Records = {
  deliveries: Row[];
  batches: Row[];
  losses: Row[];
  transfers: Row[];
  orders: Row[];
  counts: Row[];
};

/** A line of the till. */
export type RungLine = {
  day: Day;
  /** Minutes after midnight of the business date; past 1440 after midnight. */
  minutes: number;
  ring: string;
  modifiers: string[];
  quantity: number;
  gross: number;
  net: number;
  check: number;
  till: string;
  isVoid: boolean;
};

export type OpenOrder = {
  order: string;
  arrivesOn: Day;
  arrivesAt: string;
  supplier: string;
  lines: { item: string; quantity: number; of: "container" | "case" }[];
};

export type Streams = Record<
  "demand" | "guests" | "pours" | "cuts" | "kitchen" | "buying" | "counting" | "sundry",
  Random
>;

/** A bar in the middle of its weeks. */
export type Bar = {
  catalogue: Catalogue;
  /** The catalogue as the book states it: a planted slip of the pen stands in it. */
  book: Catalogue;
  itemOf: ReadonlyMap<string, SimItem>;
  /** Date of day 0, a Monday. */
  firstMonday: string;
  weeks: number;
  noise: Noise;
  faults: readonly Fault[];
  plantings: Plantings;
  random: Streams;
  stockroom: Stockroom;
  records: Records;
  rung: RungLine[];
  openOrders: OpenOrder[];
  /** Expected use by the book, without noise, of the current week. */
  expected: Map<string, number>;
  /** Variance of the current week's true use around the expected: pours, yields, top-ups. */
  variance: Map<string, number>;
  /** True serves by business date and drink. */
  serves: Map<string, Map<string, number>>;
  /** How busy each day is against the average day, events and drift included. */
  busyness(day: Day): number;
  /** Known to the staff: weekday and events, not the drift. */
  foreseen(day: Day): number;
  meanUse(day: Day): MeanUse;
  /** How freely each cut took its fruit, by day and cut. */
  cuttingEase: Map<string, number>;
  next: { invoice: number; order: number; check: number };
};

/** The day's cutting boards: what truly happened, what the book expects, and what losses took. */
export type Boards = { real: Board; book: Board; lost: Board };

export function dateOf(bar: Bar, day: Day): string {
  return dateAfter(bar.firstMonday, day);
}

/** The week a day's service belongs to, from 1. */
export function weekOf(day: Day): number {
  return Math.floor(day / 7) + 1;
}

export function weekdayName(weekday: number): string {
  return WEEKDAY_NAMES[weekday] ?? "";
}

export function itemNamed(bar: Bar, name: string): SimItem {
  const item = bar.itemOf.get(name);
  if (item === undefined) throw new Error(`${name} is not in the catalogue`);
  return item;
}

/** Water: used, never bought nor counted. */
export function isFromTheTap(bar: Bar, item: string): boolean {
  return bar.itemOf.get(item)?.category === "water";
}

/** The pack an item is bought and counted in, in base units. */
export function containerOf(item: SimItem): { pack: string; size: number; perCase: number } {
  const pack = item.packs[0];
  if (pack === undefined) throw new Error(`${item.name} has no pack`);
  return { pack: pack.pack, size: packSize(pack), perCase: pack.perCase };
}

export function packSize({ amount, unit }: { amount: number; unit: string }): number {
  return unit === "kg" || unit === "l" ? amount * 1000 : amount;
}

/** What is left of an item once the fruit already asked for today is set aside. */
export function available(bar: Bar, boards: Boards, item: string): number {
  return bar.stockroom.stock(item) - boards.real.pieces(item) - boards.lost.pieces(item);
}

export function plant(bar: Bar, day: Day, planting: Omit<Planted, "date" | "week">): void {
  bar.plantings.add({ ...planting, date: dateOf(bar, day), week: weekOf(day) });
}

export function expectUse(bar: Bar, item: string, amount: number): void {
  bar.expected.set(item, (bar.expected.get(item) ?? 0) + amount);
}

export function noteVariance(bar: Bar, item: string, squared: number): void {
  bar.variance.set(item, (bar.variance.get(item) ?? 0) + squared);
}

/** Rounded as a person writes it. roundTo(1234, 50) → 1250. */
export function roundTo(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toFixed(6));
}
