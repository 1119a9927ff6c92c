import { type Catalogue, groupBy } from "#engine/catalogue.ts";
import type { Facts } from "#engine/facts.ts";
import { foldName } from "#engine/name.ts";
import { soldAs } from "#engine/sales/sold-as.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import type { BusinessDate } from "#engine/time.ts";

/** What was sold day by day: serves of each drink, and of each item sold straight. */
export type SoldSeries = {
  /** The days with any sale, ascending. A day without one is a closed day, not a day without demand. */
  dates: BusinessDate[];
  /** Serves on each of `dates`, net of voids; 0 on an open day without a sale. */
  serves: Map<string, Float64Array>;
};

/** What one sale of a ring name counts as in the forecast. */
type Served = { what: string; serves: number };

/**
 * Serves per business day, quantity × serves, net of voids, of the days before `before` (all, without it).
 *
 * A name the book does not know or ignores is left out, but its day counts as open.
 */
export function soldSeries(
  { catalogue }: Pick<Facts, "catalogue">,
  sales: readonly SaleGroup[],
  before?: BusinessDate,
): SoldSeries {
  const byDate = groupBy(
    sales.filter(({ businessDate }) => before === undefined || businessDate < before),
    (sale) => sale.businessDate,
  );
  const dates = [...byDate.keys()].filter((date) => isOpen(byDate.get(date) ?? [])).sort();
  const serves = new Map<string, Float64Array>();
  const readServed = servedReader(catalogue);
  for (const [day, date] of dates.entries()) {
    for (const sale of byDate.get(date) ?? []) {
      const served = readServed(sale);
      if (served === undefined) continue;
      let row = serves.get(served.what);
      if (row === undefined) {
        row = new Float64Array(dates.length);
        serves.set(served.what, row);
      }
      row[day] = (row[day] ?? 0) + sale.quantity * served.serves;
    }
  }
  // A void rung on a later day than its sale would make that day's demand negative.
  const counted = [...serves].map(([what, row]): [string, Float64Array] => [
    what,
    row.map((sold) => Math.max(0, sold)),
  ]);
  return { dates, serves: new Map(counted) };
}

/** A day on which no more was sold than taken back was not a trading day. */
function isOpen(sales: readonly SaleGroup[]): boolean {
  return sales.reduce((sum, sale) => sum + sale.quantity, 0) > 0;
}

/** Reads each ring name once: what it is does not change from day to day, only how much of an item it pours. */
export function servedReader(catalogue: Catalogue): (sale: SaleGroup) => Served | undefined {
  const known = new Map<string, Served | undefined>();
  return ({ ringName, businessDate }) => {
    if (known.has(ringName)) return known.get(ringName);
    const served = servedOf(catalogue, ringName, businessDate);
    known.set(ringName, served);
    return served;
  };
}

function servedOf(catalogue: Catalogue, ringName: string, date: BusinessDate): Served | undefined {
  const sold = soldAs(catalogue, ringName, date);
  const serves = catalogue.ringNames.get(foldName(ringName))?.serves ?? 1;
  if (sold.kind === "drink") return { what: sold.drink, serves };
  if (sold.kind === "item") return { what: sold.item, serves };
  return undefined;
}
