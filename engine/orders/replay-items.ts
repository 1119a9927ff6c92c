import { groupBy } from "#engine/catalogue.ts";
import { unitCosts } from "#engine/costing/unit-cost.ts";
import type { DemandModel } from "#engine/demand/model.ts";
import { serveUseReader } from "#engine/demand/serve-use.ts";
import { usedRatios } from "#engine/demand/used-ratio.ts";
import type { Facts } from "#engine/facts.ts";
import { lostMargins } from "#engine/orders/lost-margin.ts";
import { criticalRatio } from "#engine/orders/par.ts";
import { type BuyingUnit, buyingUnit, chooseUnit } from "#engine/orders/purchase.ts";
import { saleAsks } from "#engine/sales/asks.ts";
import { expectedUse } from "#engine/sales/expected-use.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { packsInForce } from "#engine/stock/pack.ts";
import type { BusinessDate, Instant } from "#engine/time.ts";

/** An item as it was used day by day, in base units. */
export type PastItem = {
  item: string;
  unit: BuyingUnit;
  isCount: boolean;
  shelfLifeDays: number | null;
  /** Major units a base unit; 0 where no price is known. */
  costPerBase: number;
  /** The service level of the item or else the venue; null goes by the margin at risk. */
  statedLevel: number | null;
  /** Set by hand, in base units; null is computed. */
  parSet: number | null;
  /** Major units lost by a base unit short; null when not known. */
  lostMargin: number | null;
  /** What pays best where it spoils first; null where that is not known. */
  spoiltLevel: number | null;
  use: Float64Array;
};

/** The items that a past can be replayed of: used in it, and bought from a supplier with order days. */
export function pastItems(
  facts: Facts,
  sales: readonly SaleGroup[],
  { at, dates, model }: { at: Instant; dates: readonly BusinessDate[]; model: DemandModel },
): PastItem[] {
  const { catalogue } = facts;
  const use = useByDay(facts, sales, dates, at);
  const costs = unitCosts(facts, at);
  const readUse = serveUseReader(catalogue, sales, { asOf: model.asOf, raw: true });
  const lost = lostMargins(facts, sales, { model, readUse, costs, dates: dates.slice(0, 7) });
  return [...catalogue.items.values()].flatMap(({ name, base, shelfLifeDays, serviceLevel, par }) => {
    const own = use.get(name);
    const sum = own?.reduce((total, value) => total + value, 0) ?? 0;
    if (own === undefined || sum <= 0) return [];
    const perDay = sum / dates.length;
    const units = packsInForce(catalogue, name, dates.at(-1) ?? "")
      .filter(({ supplier }) => facts.book.supplierDays.some((day) => day.supplier === supplier))
      .map((pack) => buyingUnit(catalogue, pack));
    const unit = chooseUnit(units, { short: 7 * perDay, perDay, shelfLifeDays });
    if (unit === undefined) return [];
    const cost = costs.get(name) ?? null;
    return [
      {
        item: name,
        unit,
        isCount: base === "each",
        shelfLifeDays,
        costPerBase: cost ?? 0,
        statedLevel: serviceLevel ?? catalogue.venue.serviceLevel,
        parSet: par,
        lostMargin: lost.get(name) ?? null,
        spoiltLevel: criticalRatio({ shortCost: lost.get(name) ?? null, overCost: cost }),
        use: own,
      },
    ];
  });
}

/** What each item was used each day, by the specs of the day and what the counts say is really used. */
function useByDay(
  facts: Facts,
  sales: readonly SaleGroup[],
  dates: readonly BusinessDate[],
  at: Instant,
): Map<string, Float64Array> {
  const byDate = groupBy(sales, ({ businessDate }) => businessDate);
  const ratios = usedRatios(facts, sales, at);
  const use = new Map<string, Float64Array>();
  for (const [day, date] of dates.entries()) {
    const { asks } = saleAsks(facts.catalogue, byDate.get(date) ?? [], { raw: true });
    for (const [item, { amount }] of expectedUse(asks, { dividersOf: () => [] })) {
      const row = use.get(item) ?? new Float64Array(dates.length);
      row[day] = Math.max(0, amount) * (ratios.get(item)?.ratio ?? 1);
      use.set(item, row);
    }
  }
  return use;
}
