import type { Demand } from "#engine/demand/distribution.ts";
import { largestPart } from "#engine/demand/largest-part.ts";
import { type DemandModel, type DrinkDay, fitDemand } from "#engine/demand/model.ts";
import { soldSeries } from "#engine/demand/series.ts";
import { type ServeFruit, type ServeItem, type ServeUse, serveUseReader } from "#engine/demand/serve-use.ts";
import type { Facts } from "#engine/facts.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { type BusinessDate, datesFrom } from "#engine/time.ts";

/** Demand for items in base units: over all days together, and day by day. */
export type ItemDemand = {
  total: Map<string, Demand>;
  days: { date: BusinessDate; items: Map<string, Demand> }[];
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
      items: sums.add(dayUse(model, readUse, day), day.share),
    }));
    return { total: sums.total(), days: byDay };
  };
}

/** One item on one day. `common` is the part of the mean that busy nights raise. */
type ItemDay = {
  mean: number;
  common: number;
  /** Of this day and these serves alone. */
  ownVariance: number;
  /** Standard deviation shared by all days. */
  biasSd: number;
  /** Part of the mean by drink, for what the drink's share may be off on all days alike. */
  byDrink: { what: string; amount: number; shareCv2: number }[];
};

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

function itemOf(items: Map<string, ItemDay>, item: string): ItemDay {
  let day = items.get(item);
  if (day === undefined) {
    day = { mean: 0, common: 0, ownVariance: 0, biasSd: 0, byDrink: [] };
    items.set(item, day);
  }
  return day;
}

/** So many serves, each taking its own amount: the variance of a compound count. */
function addServed(item: ItemDay, drink: DrinkDay, { mean, square, biasSd }: ServeItem): void {
  item.mean += drink.mean * mean;
  item.common += drink.usual * mean;
  item.ownVariance += drink.chanceVariance * square + drink.ownVariance * mean * mean;
  item.biasSd += drink.mean * biasSd;
  item.byDrink.push({ what: drink.what, amount: drink.usual * mean, shareCv2: drink.shareCv2 });
}

/** What the drinks of one day ask of the parts of each fruit. */
class FruitDay {
  readonly #sources = new Map<
    string,
    { parts: string[]; mean: number[]; usual: number[]; covariance: number[][] }
  >();

  add(drink: DrinkDay, cut: ServeFruit): void {
    const held = this.#sources.get(cut.source) ?? { parts: [], mean: [], usual: [], covariance: [] };
    this.#sources.set(cut.source, held);
    const places = cut.parts.map((part) => placeOf(held, part));
    places.forEach((p, i) => {
      const mean = cut.mean[i] ?? 0;
      held.mean[p] = (held.mean[p] ?? 0) + drink.mean * mean;
      held.usual[p] = (held.usual[p] ?? 0) + drink.usual * mean;
      places.forEach((q, j) => {
        const row = held.covariance[p] ?? [];
        const together = drink.chanceVariance * (cut.product[i]?.[j] ?? 0);
        row[q] = (row[q] ?? 0) + together + drink.ownVariance * mean * (cut.mean[j] ?? 0);
        held.covariance[p] = row;
      });
    });
  }

  /** A busy night raises all parts alike, and with them the largest. */
  pieces(): { source: string; mean: number; common: number; variance: number }[] {
    return [...this.#sources].map(([source, { mean, usual, covariance }]) => {
      const largest = largestPart({ mean, covariance });
      const most = Math.max(...mean);
      const risen = most > 0 ? Math.max(...usual) / most : 0;
      return {
        source,
        mean: largest.mean,
        common: largest.mean * Math.min(1, risen),
        variance: largest.variance,
      };
    });
  }
}

function placeOf(
  held: { parts: string[]; mean: number[]; usual: number[]; covariance: number[][] },
  part: string,
) {
  const known = held.parts.indexOf(part);
  if (known >= 0) return known;
  held.parts.push(part);
  held.mean.push(0);
  held.usual.push(0);
  held.covariance.push([]);
  return held.parts.length - 1;
}

/** Sums days that are alike in what the forecast may be wrong by, and apart in everything else. */
class DemandSums {
  readonly #model: DemandModel;
  readonly #items = new Map<
    string,
    {
      mean: number;
      common: number;
      ownVariance: number;
      biasSd: number;
      byDrink: Map<string, { amount: number; shareCv2: number }>;
    }
  >();

  constructor(model: DemandModel) {
    this.#model = model;
  }

  /** Adds a day and tells its own demand. */
  add(day: Map<string, ItemDay>, share: number): Map<string, Demand> {
    const { dayCv2, levelCv2 } = this.#model;
    return new Map(
      [...day].map(([name, item]) => {
        const sum = this.#sumOf(name);
        const common = item.common * share;
        const variance = item.ownVariance * share + dayCv2 * common * common;
        sum.mean += item.mean * share;
        sum.common += common;
        sum.ownVariance += variance;
        sum.biasSd += item.biasSd * share;
        let off = levelCv2 * common * common + (item.biasSd * share) ** 2;
        for (const { what, amount, shareCv2 } of item.byDrink) {
          const held = sum.byDrink.get(what) ?? { amount: 0, shareCv2 };
          held.amount += amount * share;
          sum.byDrink.set(what, held);
          off += shareCv2 * (amount * share) ** 2;
        }
        return [name, { mean: item.mean * share, variance: variance + off }];
      }),
    );
  }

  total(): Map<string, Demand> {
    const { levelCv2 } = this.#model;
    return new Map(
      [...this.#items].map(([name, { mean, common, ownVariance, biasSd, byDrink }]) => {
        let variance = ownVariance + levelCv2 * common * common + biasSd * biasSd;
        for (const { amount, shareCv2 } of byDrink.values()) variance += shareCv2 * amount * amount;
        return [name, { mean, variance }];
      }),
    );
  }

  #sumOf(name: string) {
    let sum = this.#items.get(name);
    if (sum === undefined) {
      sum = { mean: 0, common: 0, ownVariance: 0, biasSd: 0, byDrink: new Map() };
      this.#items.set(name, sum);
    }
    return sum;
  }
}
