import { FruitDay } from "#engine/demand/fruit-day.ts";
import { addServed, DemandSums, type ItemDay, type ItemNeed, itemOf } from "#engine/demand/item-sums.ts";
import { type DemandModel, fitDemand } from "#engine/demand/model.ts";
import { soldSeries } from "#engine/demand/series.ts";
import { type ServeUse, serveUseReader } from "#engine/demand/serve-use.ts";
import type { Facts } from "#engine/facts.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { type BusinessDate, datesFrom } from "#engine/time.ts";

/** Demand for items in base units: over all days together, and day by day. */
export type ItemDemand = {
  total: Map<string, ItemNeed>;
  days: { date: BusinessDate; items: Map<string, ItemNeed> }[];
};

/** A business day, and the share of its demand that is meant: 1 = all of it. */
export type DemandDay = { date: BusinessDate; share: number };

/**
 * What the drinks of the days from `from` to `to` (both included) will take of each item.
 *
 * The specs in force on each of those days are used, with the modifiers guests ask for; days before
 * `asOf` are looked at. With `raw` stocked preps are opened up to what must be bought for them; without
 * it they are needed as themselves. The variance carries busy nights, which raise all drinks together.
 */
export function itemDemand({
  facts,
  sales,
  asOf,
  from,
  to,
  raw,
}: {
  facts: Facts;
  sales: readonly SaleGroup[];
  asOf: BusinessDate;
  from: BusinessDate;
  to: BusinessDate;
  raw: boolean;
}): ItemDemand {
  const model = fitDemand(facts, soldSeries(facts, sales, asOf), asOf);
  const days = datesFrom({ from, to }).map((date) => ({ date, share: 1 }));
  return itemDemandOf({ facts, sales, model, days, raw });
}

export type ItemDemandQuestion = {
  facts: Facts;
  sales: readonly SaleGroup[];
  model: DemandModel;
  days: readonly DemandDay[];
  raw: boolean;
};

/** The same over days of which only a share may be meant, from a model that is already fitted. */
export function itemDemandOf(question: ItemDemandQuestion): ItemDemand {
  return itemDemandReader(question)(question.days);
}

/** For asking about several stretches of days without reading the sales again. */
export function itemDemandReader({
  facts,
  sales,
  model,
  raw,
}: Omit<ItemDemandQuestion, "days">): (days: readonly DemandDay[]) => ItemDemand {
  const readUse = serveUseReader(facts.catalogue, sales, { asOf: model.asOf, raw });
  return (days) => {
    const sums = new DemandSums(model);
    const byDay = days.map((day) => ({
      date: day.date,
      items: sums.add(dayUse(model, readUse, day), {
        share: day.share,
        holidayCv2: model.on(day.date)[0]?.holidayCv2 ?? 0,
      }),
    }));
    return { total: sums.total(), days: byDay };
  };
}

function dayUse(
  model: DemandModel,
  readUse: (what: string, date: BusinessDate) => ServeUse,
  { date }: DemandDay,
): Map<string, ItemDay> {
  const items = new Map<string, ItemDay>();
  const fruit = new FruitDay();
  for (const drink of model.on(date)) {
    const use = readUse(drink.what, date);
    for (const served of use.items) addServed(itemOf(items, served.item), drink, served);
    for (const cut of use.fruit) fruit.add(drink, cut);
  }
  for (const { source, mean, common, variance } of fruit.pieces()) {
    const item = itemOf(items, source);
    item.mean += mean;
    item.common += common;
    item.ownVariance += variance;
  }
  return items;
}
