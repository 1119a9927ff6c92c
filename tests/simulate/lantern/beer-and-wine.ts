import type { SimItem } from "../catalogue.ts";
import { type Bottle, bottle } from "./bottle.ts";

const BREWER = "Kelpmoor Beer & Wine";

type Brewed = Bottle & { pack?: string; supplier?: string };

function brewed(name: string, category: string, facts: Brewed): SimItem {
  const { pack, supplier = BREWER, ...rest } = facts;
  const made = bottle(name, category, { safetyDays: 5, ...rest });
  return { ...made, packs: made.packs.map((form) => ({ ...form, pack: pack ?? form.pack, supplier })) };
}

/** Sold and counted by the bottle or can. */
function bottledEach(name: string, category: string, facts: Brewed): SimItem {
  const made = brewed(name, category, { split: false, perCase: 24, pour: "measured", ...facts });
  return {
    ...made,
    base: "each",
    method: "pieces",
    packs: made.packs.map((form) => ({ ...form, amount: 1, unit: "each" })),
  };
}

function keg(name: string, facts: Brewed): SimItem {
  const made = brewed(name, "beer", { ml: 58_674, perCase: 1, pour: "free", pack: "half barrel", ...facts });
  return { ...made, areas: ["Walk-in"], densityGPerMl: 1.008, trueDensityGPerMl: 1.008, method: "scale" };
}

const withTare = (item: SimItem, emptyG: number): SimItem => ({
  ...item,
  packs: item.packs.map((form) => ({ ...form, emptyG })),
});

const WINE = { perCase: 12, split: false, pour: "free", allergens: "sulphites", fullInFirst: 3 } as const;
const WINE_AREAS = { areas: ["Back bar", "Walk-in"] };
const MIXER = { perCase: 12, split: false, fullInFirst: 4, areas: ["Front well", "Dry store"] };
const BOTTLES = { areas: ["Back bar", "Walk-in"], fullInFirst: 24 };

const priced: SimItem[] = [
  withTare(keg("Gannetsea Lager", { code: "KM-01", abv: 4.8, price: 142, allergens: "barley" }), 13_500),
  withTare(keg("Skerrywell Pale Ale", { code: "KM-02", abv: 5.4, price: 178, allergens: "barley" }), 13_500),
  bottledEach("Mudlarker Stout", "beer", {
    code: "KM-11",
    abv: 5.6,
    price: 46,
    pack: "12 oz bottle",
    allergens: "barley",
    ...BOTTLES,
  }),
  bottledEach("Ropeyard Cider", "beer", {
    code: "KM-12",
    abv: 5,
    price: 44,
    pack: "12 oz bottle",
    allergens: "sulphites",
    ...BOTTLES,
  }),
  bottledEach("Lowwater Zero Lager", "beer", {
    code: "KM-13",
    abv: 0.4,
    price: 38,
    pack: "12 oz bottle",
    allergens: "barley",
    ...BOTTLES,
  }),
  brewed("Bellancroft Sparkling Brut", "wine", {
    code: "KM-21",
    abv: 11.5,
    price: 12.5,
    ...WINE,
    ...WINE_AREAS,
  }),
  brewed("Grayfenny White", "wine", { code: "KM-22", abv: 12.5, price: 11, ...WINE, ...WINE_AREAS }),
  brewed("Grayfenny Red", "wine", {
    code: "KM-23",
    abv: 13.5,
    price: 11.5,
    ...WINE,
    areas: ["Back bar", "Cellar"],
  }),
  brewed("Grayfenny Rosé", "wine", { code: "KM-24", abv: 12.5, price: 11, ...WINE, ...WINE_AREAS }),
  brewed("Fizzardy Soda Water", "mixer", { code: "KM-31", ml: 1000, price: 1.6, ...MIXER }),
  brewed("Fizzardy Tonic Water", "mixer", { code: "KM-32", ml: 1000, price: 2.1, ...MIXER }),
  brewed("Fizzardy Ginger Beer", "mixer", { code: "KM-33", ml: 1000, price: 2.3, ...MIXER }),
  brewed("Fizzardy Cola", "mixer", { code: "KM-34", ml: 1000, price: 1.7, ...MIXER }),
  bottledEach("Cressholme Still Water", "mixer", {
    code: "KM-35",
    price: 21,
    pack: "500 ml bottle",
    areas: ["Dry store"],
  }),
];

/** Cases of bottled beer and water are priced by the case. */
function pricedByCase(item: SimItem): SimItem {
  return item.base !== "each"
    ? item
    : { ...item, packs: item.packs.map((form) => ({ ...form, pricePer: "case" })) };
}

export const BEER_AND_WINE: SimItem[] = priced.map(pricedByCase);
