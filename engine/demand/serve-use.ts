import type { Catalogue } from "#engine/catalogue.ts";
import { servedReader } from "#engine/demand/series.ts";
import { saleAsks } from "#engine/sales/asks.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { type Bill, billOf } from "#engine/specs/bill.ts";
import { modifyLines, serveLines, servePortions } from "#engine/specs/serve.ts";
import { addDays, type BusinessDate } from "#engine/time.ts";

/** What one serve takes of an item on the average, in base units, and how that differs between serves. */
export type ServeItem = {
  item: string;
  mean: number;
  /** Mean of the square over serves: a double weighs four times. */
  square: number;
  /** Standard deviation that all serves share: of an estimated top-up. */
  biasSd: number;
};

/** Shares of a fruit's parts that one serve asks: means, and means of the products of each two parts. */
export type ServeFruit = { source: string; parts: string[]; mean: number[]; product: number[][] };

export type ServeUse = { items: ServeItem[]; fruit: ServeFruit[] };

/** How a drink was rung of late: so many of its serves by this name with these modifiers. */
type Ringing = { sale: SaleGroup; servesPerSale: number; serves: number };

/** Doubles and swaps of the last quarter say how the next ones will be asked for. */
const RINGING_DAYS = 91;

/**
 * Reads what a serve of each drink takes on a (future) date: the specs in force on that day, with the
 * modifiers guests have been asking for. `raw` opens stocked preps up to their inputs.
 */
export function serveUseReader(
  catalogue: Catalogue,
  sales: readonly SaleGroup[],
  { asOf, raw }: { asOf: BusinessDate; raw: boolean },
): (what: string, date: BusinessDate) => ServeUse {
  const ringings = ringingsOf(catalogue, sales, asOf);
  const known = new Map<string, ServeUse>();
  return (what, date) => {
    const key = `${stretchOf(catalogue, date)}\u0000${what}`;
    let use = known.get(key);
    if (use === undefined) {
      use = useOf(billsOf(catalogue, what, ringings.get(what) ?? [], { date, raw }));
      known.set(key, use);
    }
    return use;
  };
}

function ringingsOf(
  catalogue: Catalogue,
  sales: readonly SaleGroup[],
  asOf: BusinessDate,
): Map<string, Ringing[]> {
  const readServed = servedReader(catalogue);
  const from = addDays(asOf, -RINGING_DAYS);
  const byRing = new Map<string, Map<string, Ringing>>();
  for (const sale of sales) {
    if (sale.businessDate >= asOf || sale.businessDate < from) continue;
    const served = readServed(sale);
    if (served === undefined) continue;
    let own = byRing.get(served.what);
    if (own === undefined) {
      own = new Map();
      byRing.set(served.what, own);
    }
    const key = `${sale.ringName}\u0000${sale.modifiers}`;
    const serves = sale.quantity * served.serves;
    const held = own.get(key);
    if (held === undefined) own.set(key, { sale, servesPerSale: served.serves, serves });
    else held.serves += serves;
  }
  return new Map(
    [...byRing].map(([what, own]) => [what, [...own.values()].filter(({ serves }) => serves > 0)]),
  );
}

/** The bill of one serve, and the share of serves that are so. */
type WeightedBill = { bill: Bill; perServe: number; share: number };

function billsOf(
  catalogue: Catalogue,
  what: string,
  ringings: readonly Ringing[],
  { date, raw }: { date: BusinessDate; raw: boolean },
): WeightedBill[] {
  const rung = ringings.flatMap(({ sale, servesPerSale, serves }) => {
    const group = { ...sale, businessDate: date, at: null, quantity: 1, netMinor: 0 };
    const ask = saleAsks(catalogue, [group], { raw }).asks[0];
    return ask === undefined ? [] : [{ bill: ask.bill, perServe: ask.times / servesPerSale, share: serves }];
  });
  if (rung.length === 0) return plainBill(catalogue, what, { date, raw });
  const all = rung.reduce((sum, { share }) => sum + share, 0);
  return rung.map((bill) => ({ ...bill, share: bill.share / all }));
}

/** A drink that was never rung is made to its spec. */
function plainBill(
  catalogue: Catalogue,
  what: string,
  options: { date: BusinessDate; raw: boolean },
): WeightedBill[] {
  const drink = catalogue.drinks.get(what);
  const lines = drink === undefined ? undefined : serveLines(catalogue, what, options.date);
  if (lines === undefined) return [];
  const portions = servePortions(catalogue, drink, modifyLines(lines, []));
  return [{ bill: billOf(catalogue, portions, options), perServe: 1, share: 1 }];
}

function useOf(bills: readonly WeightedBill[]): ServeUse {
  const items = new Map<string, ServeItem>();
  const fruit = new Map<string, ServeFruit>();
  for (const { bill, perServe, share } of bills) {
    for (const { item, amount, variance, biasSd } of bill.items) {
      const held = items.get(item) ?? { item, mean: 0, square: 0, biasSd: 0 };
      held.mean += share * amount * perServe;
      held.square += share * ((amount * perServe) ** 2 + variance * perServe);
      held.biasSd += share * biasSd * perServe;
      items.set(item, held);
    }
    for (const [source, shares] of fruitShares(bill)) {
      const held = fruit.get(source) ?? { source, parts: [], mean: [], product: [] };
      addFruit(held, shares, perServe, share);
      fruit.set(source, held);
    }
  }
  return { items: [...items.values()], fruit: [...fruit.values()] };
}

function fruitShares(bill: Bill): Map<string, Map<string, number>> {
  const bySource = new Map<string, Map<string, number>>();
  for (const { source, parts, shares } of bill.cuts) {
    const own = bySource.get(source) ?? new Map<string, number>();
    for (const part of parts) own.set(part, (own.get(part) ?? 0) + shares);
    bySource.set(source, own);
  }
  return bySource;
}

function addFruit(held: ServeFruit, shares: Map<string, number>, perServe: number, weight: number): void {
  for (const part of shares.keys()) addPart(held, part);
  held.parts.forEach((part, p) => {
    const asked = (shares.get(part) ?? 0) * perServe;
    held.mean[p] = (held.mean[p] ?? 0) + weight * asked;
    held.parts.forEach((other, q) => {
      const row = held.product[p] ?? [];
      row[q] = (row[q] ?? 0) + weight * asked * (shares.get(other) ?? 0) * perServe;
      held.product[p] = row;
    });
  });
}

function addPart(held: ServeFruit, part: string): void {
  if (held.parts.includes(part)) return;
  held.parts.push(part);
  held.mean.push(0);
  held.product.push([]);
}

/** Bills are alike on all days between two changes of spec, prep, cut or pack. */
export function stretchOf({ changeDates }: Catalogue, date: BusinessDate): number {
  const after = changeDates.findIndex((change) => change > date);
  return after < 0 ? changeDates.length : after;
}
