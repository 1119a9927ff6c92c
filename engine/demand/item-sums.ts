import type { Demand } from "#engine/demand/distribution.ts";
import type { DrinkDay } from "#engine/demand/drink-day.ts";
import type { DemandModel } from "#engine/demand/model.ts";
import type { ServeItem } from "#engine/demand/serve-use.ts";

/** Demand for one item; `biasSd`, part of the variance, is what an estimated top-up may be off by every time. */
export type ItemNeed = Demand & { biasSd: number };

/** One item on one day. `common` is the part of the mean that busy nights raise. */
export type ItemDay = {
  mean: number;
  common: number;
  /** Of this day and these serves alone. */
  ownVariance: number;
  /** Standard deviation shared by all days. */
  biasSd: number;
  /** Part of the mean by drink, for what the drink's share may be off on all days alike. */
  byDrink: { what: string; amount: number; shareCv2: number }[];
};

/** The day of an item, begun when it is first asked for. */
export function itemOf(items: Map<string, ItemDay>, item: string): ItemDay {
  let day = items.get(item);
  if (day === undefined) {
    day = { mean: 0, common: 0, ownVariance: 0, biasSd: 0, byDrink: [] };
    items.set(item, day);
  }
  return day;
}

/** So many serves, each taking its own amount: the variance of a compound count. */
export function addServed(item: ItemDay, drink: DrinkDay, { mean, square, biasSd }: ServeItem): void {
  item.mean += drink.mean * mean;
  item.common += drink.usual * mean;
  item.ownVariance += drink.chanceVariance * square + drink.ownVariance * mean * mean;
  item.biasSd += drink.mean * biasSd;
  item.byDrink.push({ what: drink.what, amount: drink.usual * mean, shareCv2: drink.shareCv2 });
}

/** Sums days that are alike in what the forecast may be wrong by, and apart in everything else. */
export class DemandSums {
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
  add(
    day: Map<string, ItemDay>,
    { share, holidayCv2 }: { share: number; holidayCv2: number },
  ): Map<string, ItemNeed> {
    const { levelCv2 } = this.#model;
    const dayCv2 = this.#model.dayCv2 + holidayCv2;
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
        const biasSd = item.biasSd * share;
        return [name, { mean: item.mean * share, variance: variance + off, biasSd }];
      }),
    );
  }

  total(): Map<string, ItemNeed> {
    const { levelCv2 } = this.#model;
    return new Map(
      [...this.#items].map(([name, { mean, common, ownVariance, biasSd, byDrink }]) => {
        let variance = ownVariance + levelCv2 * common * common + biasSd * biasSd;
        for (const { amount, shareCv2 } of byDrink.values()) variance += shareCv2 * amount * amount;
        return [name, { mean, variance, biasSd }];
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
