import { newBoard } from "./board.ts";
import { dateAfter } from "./calendar.ts";
import type { Catalogue, Day } from "./catalogue.ts";
import { takeCount } from "./counting.ts";
import type { Fault, Planted } from "./faults.ts";
import { clearBoards, runKitchen } from "./kitchen.ts";
import { openBar } from "./opening.ts";
import { placeOrders } from "./ordering.ts";
import { receiveDeliveries } from "./receiving.ts";
import { runService } from "./service.ts";
import { type Sheets, writeSheets } from "./sheets.ts";
import { type Bar, type Boards, dateOf, type Noise } from "./state.ts";
import type { ItemWeek } from "./stockroom.ts";
import { runSundry } from "./sundry.ts";
import { type SalesFile, tillFiles } from "./till-files.ts";

export type Simulation = {
  seed: number;
  weeks: number;
  /** Trouble to plant; none gives a clean bar. */
  faults: readonly Fault[];
  /** Default: the Harbour Lantern. */
  catalogue?: Catalogue;
  /** Date of the opening count, a Monday; default 2026-08-24. */
  firstMonday?: string;
  /** Default: `USUAL_NOISE`. The same block is written to venue.json. */
  noise?: Noise;
};

/** What truly happened, which no bar ever knows. */
export type Truth = {
  weeks: TrueWeek[];
  /** Serves truly made, by business date, then by drink (or by ring name for what is sold as an item). */
  serves: Record<string, Record<string, number>>;
  planted: Planted[];
  noise: Noise;
  /** Items whose expected use hangs on an estimate: they top up a glass. */
  toppedUp: string[];
};

export type TrueWeek = {
  /** From 1. */
  week: number;
  openingCount: string;
  closingCount: string;
  /** First and last business date. */
  from: string;
  to: string;
  items: Record<string, ItemWeek>;
  /** Use that the book's own specs, sales and batches come to, without noise. */
  expected: Record<string, number>;
  /** Standard deviation of true use around the expected, from pours, yields and top-ups; counting comes on top. */
  useSd: Record<string, number>;
};

export type SimulatedBar = { book: Sheets; sales: SalesFile[]; truth: Truth };

/**
 * Runs a bar for so many weeks and returns its book, its till's files and the truth.
 *
 * The same arguments give the same bytes. Each concern draws from its own stream, so a fault changes what it
 * touches and little else. simulateBar({ seed: 1, weeks: 13, faults: [] }) is the demo bar without its trouble.
 */
export function simulateBar(simulation: Simulation): SimulatedBar {
  const bar = openBar(simulation);
  const weeks: TrueWeek[] = [];
  for (let day = 0; day <= bar.weeks * 7; day += 1) {
    if (day % 7 === 0 || bar.catalogue.countOn?.includes(day % 7)) takeCount(bar, day);
    if (day % 7 === 0 && day > 0) weeks.push(closeWeek(bar, day));
    if (day < bar.weeks * 7) runDay(bar, day);
  }
  return {
    book: writeSheets(bar),
    sales: tillFiles(bar),
    truth: {
      weeks,
      serves: Object.fromEntries([...bar.serves].map(([date, serves]) => [date, Object.fromEntries(serves)])),
      planted: bar.plantings.all(),
      noise: bar.noise,
      toppedUp: toppedUpItems(bar.catalogue),
    },
  };
}

function runDay(bar: Bar, day: Day): void {
  const boards: Boards = {
    real: newBoard(bar.catalogue, day),
    book: newBoard(bar.catalogue, day),
    lost: newBoard(bar.catalogue, day),
  };
  receiveDeliveries(bar, day);
  placeOrders(bar, day);
  runKitchen(bar, boards, day);
  runService(bar, boards, day);
  runSundry(bar, boards, day);
  sellGiftCards(bar, day);
  clearBoards(bar, boards, day);
}

function sellGiftCards(bar: Bar, day: Day): void {
  const { ignored } = bar.catalogue;
  if (ignored === undefined) return;
  for (let left = bar.random.sundry.poisson(ignored.perWeek / 7); left > 0; left -= 1) {
    const money = ignored.price;
    bar.next.check += 1;
    const { check } = bar.next;
    bar.rung.push({
      day,
      minutes: 18 * 60,
      ring: ignored.ring,
      modifiers: [],
      quantity: 1,
      gross: money,
      net: money,
      check,
      till: "Bar 1",
      isVoid: false,
    });
  }
}

function closeWeek(bar: Bar, day: Day): TrueWeek {
  const expected = Object.fromEntries(bar.expected);
  bar.expected.clear();
  const useSd = Object.fromEntries([...bar.variance].map(([item, squared]) => [item, Math.sqrt(squared)]));
  bar.variance.clear();
  return {
    week: day / 7,
    openingCount: dateOf(bar, day - 7),
    closingCount: dateOf(bar, day),
    from: dateOf(bar, day - 7),
    to: dateAfter(bar.firstMonday, day - 1),
    items: bar.stockroom.closeWeek(),
    expected,
    useSd,
  };
}

function toppedUpItems({ drinks }: Catalogue): string[] {
  const topped = drinks.flatMap(({ versions }) =>
    versions.flatMap(({ lines }) => lines.filter(({ unit }) => unit === "top")),
  );
  return [...new Set(topped.map(({ item }) => item))].sort();
}
