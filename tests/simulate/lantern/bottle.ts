import type { SimItem, SimPack } from "../catalogue.ts";

// Every label is invented. Prices are plausible wholesale prices in dollars.

export const SPIRITS = "Longmole Spirits";

export type Bottle = {
  code: string;
  abv?: number;
  price: number;
  ml?: number;
  perCase?: number;
  split?: boolean;
} & Partial<Omit<SimItem, "name" | "packs">>;

function bottlePack(ml: number): string {
  return ml >= 1000 ? `${ml / 1000} L` : `${ml} ml`;
}

/** A liquid bought by the bottle; its open bottle stands on the back bar unless said otherwise. */
export function bottle(name: string, category: string, facts: Bottle): SimItem {
  const { code, price, ml = 750, perCase = 12, split = true, ...rest } = facts;
  const pack: SimPack = {
    pack: bottlePack(ml),
    amount: ml,
    unit: "ml",
    perCase,
    supplier: SPIRITS,
    code,
    price,
    pricePer: "container",
    split,
  };
  return {
    name,
    category,
    base: "ml",
    packs: [pack],
    areas: ["Back bar", "Cellar"],
    method: "tenths",
    ...rest,
  };
}

/**
 * Counted on the scale. Density of what is in it at 20 °C, for plain spirit from the printed alcohol tables
 * (OIML R 22): 0.94805 at 40 % vol, 0.93014 at 50 %.
 */
export function onScale(item: SimItem, trueDensityGPerMl: number, emptyG: number): SimItem {
  const packs = item.packs.map((pack) => ({ ...pack, emptyG }));
  return { ...item, method: "scale", trueDensityGPerMl, packs };
}
