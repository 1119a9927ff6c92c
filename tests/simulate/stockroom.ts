import type { Day } from "./catalogue.ts";

/** Why stock moved in a week; each is a positive amount in base units. */
export const FLOWS_IN = ["received", "made", "transferredIn"] as const;
export const FLOWS_OUT = ["byDrinks", "byBatches", "byCuts", "losses", "transferredOut", "untold"] as const;
export type FlowIn = (typeof FLOWS_IN)[number];
export type FlowOut = (typeof FLOWS_OUT)[number];

/** What truly became of one item between two counts. `untold` left without a record: breakage, a batch thrown out. */
export type ItemWeek = { opening: number; closing: number } & Record<FlowIn | FlowOut, number>;

type Lot = { madeOn: Day; amount: number };

/** The true stock. It refuses to go below nothing. */
export type Stockroom = {
  stock(item: string): number;
  add(item: string, amount: number, flow: FlowIn, madeOn?: Day): void;
  take(item: string, amount: number, flow: FlowOut): void;
  /** Amount of a prep made on or before a day. */
  madeBefore(item: string, day: Day): number;
  /** Ends the week: its record by item, and a new week begins. */
  closeWeek(): Record<string, ItemWeek>;
};

export function newStockroom(opening: ReadonlyMap<string, number>): Stockroom {
  const lots = new Map<string, Lot[]>();
  const weeks = new Map<string, ItemWeek>();
  for (const [item, amount] of opening) {
    lots.set(item, amount > 0 ? [{ madeOn: -1, amount }] : []);
    weeks.set(item, newWeek(amount));
  }

  const lotsOf = (item: string) => {
    const found = lots.get(item);
    if (found === undefined) throw new Error(`${item} is not stocked`);
    return found;
  };
  const stock = (item: string) => lotsOf(item).reduce((sum, { amount }) => sum + amount, 0);
  const record = (item: string, flow: FlowIn | FlowOut, amount: number) => {
    const week = weeks.get(item);
    if (week === undefined) throw new Error(`${item} has no record`);
    week[flow] += amount;
  };

  return {
    stock,
    add(item, amount, flow, madeOn = -1) {
      lotsOf(item).push({ madeOn, amount });
      record(item, flow, amount);
    },
    take(item, amount, flow) {
      const own = lotsOf(item);
      let left = amount;
      while (left > 0) {
        const oldest = own[0];
        if (oldest === undefined) {
          if (left < 1e-6) break;
          throw new Error(`${item}: ${amount} asked, ${left} short`);
        }
        const taken = Math.min(left, oldest.amount);
        oldest.amount -= taken;
        left -= taken;
        if (oldest.amount <= 1e-9) own.shift();
      }
      record(item, flow, amount - left);
    },
    madeBefore: (item, day) =>
      lotsOf(item)
        .filter(({ madeOn }) => madeOn <= day)
        .reduce((sum, { amount }) => sum + amount, 0),
    closeWeek() {
      const closed = [...weeks].map(([item, week]) => [item, { ...week, closing: stock(item) }] as const);
      for (const [item, { closing }] of closed) weeks.set(item, newWeek(closing));
      return Object.fromEntries(closed);
    },
  };
}

function newWeek(opening: number): ItemWeek {
  return {
    opening,
    closing: opening,
    received: 0,
    made: 0,
    transferredIn: 0,
    byDrinks: 0,
    byBatches: 0,
    byCuts: 0,
    losses: 0,
    transferredOut: 0,
    untold: 0,
  };
}
