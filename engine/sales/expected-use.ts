import type { Ask } from "#engine/sales/asks.ts";
import { type Divider, isBefore, type When } from "#engine/sales/when.ts";
import type { Bill } from "#engine/specs/bill.ts";

/** An expected amount in base units: random variance adds up, bias is shared by all of one item's makings. */
export type Used = { amount: number; variance: number; bias: number };

/** Which asks of an item count: by default all. */
export type UseWindow = (item: string, when: When) => boolean;

export type UseOptions = {
  /** The moments at which an item was counted: a fruit's day is divided there. */
  dividersOf: (item: string) => readonly Divider[];
  /** Left out, all asks count. */
  within?: UseWindow;
};

/**
 * Use by item: the sum of all bills, with fruit by the shared-parts rule.
 *
 * Of what is cut from a fruit, the pieces of a business day are the largest, over its parts, of the
 * shares asked of that part; a day divided by a count of the fruit is two days. Pieces used as they
 * are come on top.
 */
export function expectedUse(asks: readonly Ask[], { dividersOf, within }: UseOptions): Map<string, Used> {
  const use = new Map<string, Used>();
  const fruit = new FruitDays(dividersOf);
  // Where all asks count, a bill that was made a thousand times is added up once.
  const timesOf = new Map<Bill, number>();
  for (const ask of asks) {
    if (within === undefined) timesOf.set(ask.bill, (timesOf.get(ask.bill) ?? 0) + ask.times);
    else addBill(use, ask.bill, ask.times, (item) => within(item, ask));
    for (const cut of ask.bill.cuts) {
      if (within === undefined || within(cut.source, ask)) fruit.add(ask, cut);
    }
  }
  for (const [bill, times] of timesOf) addBill(use, bill, times, () => true);
  for (const { source, pieces, variance } of fruit.pieces()) {
    addUse(use, source, { amount: pieces, variance, bias: 0 });
  }
  return use;
}

function addBill(
  use: Map<string, Used>,
  { items }: Bill,
  times: number,
  counts: (item: string) => boolean,
): void {
  for (const { item, amount, variance, biasSd } of items) {
    if (counts(item)) addUse(use, item, usedBy(times, amount, variance, biasSd));
  }
}

/** A drink taken back was not poured: it lowers the expectation and the number of pours alike. */
function usedBy(times: number, amount: number, variance: number, biasSd: number): Used {
  return { amount: times * amount, variance: times * variance, bias: times * biasSd };
}

function addUse(use: Map<string, Used>, item: string, more: Used): void {
  const held = use.get(item);
  if (held === undefined) use.set(item, { ...more });
  else {
    held.amount += more.amount;
    held.variance += more.variance;
    held.bias += more.bias;
  }
}

/** Standard uncertainty of an expected amount (JCGM 100: random and shared parts in quadrature). */
export function usedSd({ variance, bias }: Used): number {
  return Math.sqrt(Math.max(0, variance) + bias * bias);
}

/** Shares asked of one part of one fruit; `yieldSd` by what is cut: a day's fruit is drier or juicier as a whole. */
export type PartShares = { part: string; shares: number; variance: number; yieldSd: Map<string, number> };

/** One fruit on one (part of a) business day. */
export type FruitDay = {
  source: string;
  businessDate: string;
  pieces: number;
  variance: number;
  parts: PartShares[];
};

/** Pieces of fruit that are none: a tenth sold and taken back in another order does not come to quite 0. */
const DUST = 1e-9;

/** Gathers what is asked of each fruit, day by day. */
export class FruitDays {
  readonly #dividersOf: UseOptions["dividersOf"];
  /** By source, then by business day and its part. */
  readonly #days = new Map<string, Map<string, HeldDay>>();

  constructor(dividersOf: UseOptions["dividersOf"]) {
    this.#dividersOf = dividersOf;
  }

  add(ask: Ask, cut: Ask["bill"]["cuts"][number]): void {
    const { parts } = this.#dayOf(ask, cut.source);
    for (const part of cut.parts) {
      let held = parts.get(part);
      if (held === undefined) {
        held = { part, shares: 0, variance: 0, yieldSd: new Map() };
        parts.set(part, held);
      }
      const shares = ask.times * cut.shares;
      held.shares += shares;
      held.variance += ask.times * cut.variance;
      held.yieldSd.set(cut.gives, (held.yieldSd.get(cut.gives) ?? 0) + shares * cut.yieldSd);
    }
  }

  pieces(): FruitDay[] {
    return [...this.#days.values()].flatMap((days) =>
      [...days.values()].map(({ source, businessDate, parts }) => {
        const asked = [...parts.values()];
        // A part of which as much was taken back as sold is not asked for; what rounding leaves of it is not either.
        const some = asked.filter(({ shares }) => Math.abs(shares) > DUST);
        const most = (some.length > 0 ? some : asked).reduce((a, b) => (b.shares > a.shares ? b : a));
        const yields = [...most.yieldSd.values()].reduce((sum, sd) => sum + sd * sd, 0);
        return { source, businessDate, pieces: most.shares, variance: most.variance + yields, parts: asked };
      }),
    );
  }

  #dayOf(ask: Ask, source: string): HeldDay {
    const dividers = this.#dividersOf(source);
    const segment = dividers.length === 0 ? 0 : dividers.filter((divider) => !isBefore(ask, divider)).length;
    let days = this.#days.get(source);
    if (days === undefined) {
      days = new Map();
      this.#days.set(source, days);
    }
    const key = segment === 0 ? ask.businessDate : `${ask.businessDate} ${segment}`;
    let day = days.get(key);
    if (day === undefined) {
      day = { source, businessDate: ask.businessDate, parts: new Map() };
      days.set(key, day);
    }
    return day;
  }
}

type HeldDay = { source: string; businessDate: string; parts: Map<string, PartShares> };
