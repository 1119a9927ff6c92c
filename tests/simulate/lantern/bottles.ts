import type { SimItem, SimPack } from "../catalogue.ts";

// Every label is invented. Prices are plausible wholesale prices in dollars.

const SPIRITS = "Breakwater Spirits Co";
const BREWER = "Tidepool Beer & Wine";

type Bottle = {
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

function bottle(name: string, category: string, facts: Bottle): SimItem {
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
  return { name, category, base: "ml", packs: [pack], areas: ["Back bar", "Cellar"], method: "tenths", ...rest };
}

const WELL = { areas: ["Front well", "Cellar"], fullInFirst: 1 };

/** Empty bottle 480 g; net weights from the printed alcohol tables at 20 °C: 948.05 and 930.14 g/l. */
function onScale(item: SimItem, trueDensityGPerMl: number, emptyG: number): SimItem {
  const packs = item.packs.map((pack) => ({ ...pack, emptyG }));
  return { ...item, method: "scale", trueDensityGPerMl, packs };
}

const vodka = bottle("Quillmere Vodka", "spirit", {
  code: "BW-101", abv: 40, price: 17.5, ml: 1000, pour: "free", twoOpen: true, ...WELL,
});
const gin = bottle("Wickerlamp Dry Gin", "spirit", { code: "BW-102", abv: 42, price: 19, ml: 1000, ...WELL });
/** The bar also buys the small bottle when the litre is out. */
gin.packs.push({
  pack: "750 ml", amount: 750, unit: "ml", perCase: 12, supplier: SPIRITS, code: "BW-102S", price: 15.5,
  pricePer: "container", split: true,
});
gin.packs[0] = { ...gin.packs[0], laterPrice: { fromDay: 49, price: 20.25 } } as SimPack;

const spirits: SimItem[] = [
  vodka,
  gin,
  onScale(bottle("Saltglass Strong Gin", "spirit", { code: "BW-103", abv: 50, price: 34 }), 0.93014, 510),
  bottle("Oarlock White Rum", "spirit", { code: "BW-110", abv: 41, price: 16, ml: 1000, ...WELL }),
  onScale(bottle("Oarlock Aged Rum", "spirit", { code: "BW-111", abv: 40, price: 27 }), 0.94805, 480),
  bottle("Marrowby Overproof Rum", "spirit", { code: "BW-112", abv: 63, price: 31 }),
  bottle("Thornquay Bourbon", "spirit", { code: "BW-120", abv: 45, price: 23.5, ml: 1000, ...WELL }),
  bottle("Thornquay Rye", "spirit", { code: "BW-121", abv: 47, price: 28 }),
  bottle("Ferrowick Blended Whisky", "spirit", { code: "BW-122", abv: 43, price: 24 }),
  onScale(bottle("Ashbarrow Peated Whisky", "spirit", { code: "BW-123", abv: 40, price: 46 }), 0.94805, 495),
  bottle("Cinderpalm Blanco Agave", "spirit", { code: "BW-130", abv: 40.5, price: 25, ml: 1000, ...WELL }),
  bottle("Cinderpalm Smoked Agave", "spirit", { code: "BW-131", abv: 44, price: 38 }),
  bottle("Vantellor Grape Brandy", "spirit", { code: "BW-140", abv: 40.5, price: 29 }),
  bottle("Pomerack Apple Brandy", "spirit", { code: "BW-141", abv: 42, price: 30 }),
];

/** A density on the label's data sheet, or a full bottle once weighed: sugar makes the strength table useless. */
const orange = bottle("Orrindel Orange Liqueur", "liqueur", { code: "BW-201", abv: 40, price: 27 });
const coffee = bottle("Kettlebrine Coffee Liqueur", "liqueur", { code: "BW-202", abv: 25, price: 22 });
const liqueurs: SimItem[] = [
  {
    ...onScale(orange, 1.04, 505),
    densityGPerMl: 1.04,
  },
  {
    ...onScale(coffee, 1.14, 470),
    packs: coffee.packs.map((pack) => ({ ...pack, emptyG: 470, fullG: 1325 })),
  },
  bottle("Brasketto Bitter Aperitif", "liqueur", { code: "BW-203", abv: 24, price: 25 }),
  bottle("Solvinella Spritz Aperitif", "liqueur", { code: "BW-204", abv: 12, price: 19 }),
  bottle("Morvane Cherry Liqueur", "liqueur", { code: "BW-205", abv: 32, price: 29 }),
  bottle("Velderose Elderflower Liqueur", "liqueur", { code: "BW-206", abv: 20, price: 28 }),
  bottle("Monkswick Herbal Liqueur", "liqueur", { code: "BW-207", abv: 52, price: 48 }),
  bottle("Peachcroft Peach Liqueur", "liqueur", { code: "BW-208", abv: 18, price: 17 }),
];

const CHILLED = { areas: ["Prep fridge", "Cellar"], shelfLifeDays: 60 };
const aromatics: SimItem[] = [
  bottle("Dunmarrow Sweet Vermouth", "vermouth", { code: "BW-301", abv: 16, price: 15, allergens: "sulphites", ...CHILLED }),
  bottle("Dunmarrow Dry Vermouth", "vermouth", { code: "BW-302", abv: 18, price: 14, allergens: "sulphites", ...CHILLED }),
  bottle("Tarwick Aromatic Bitters", "bitters", {
    code: "BW-311", abv: 44, price: 11, ml: 200, pour: "measured", areas: ["Front well", "Cellar"], fullInFirst: 1,
  }),
  bottle("Tarwick Orange Bitters", "bitters", {
    code: "BW-312", abv: 39, price: 10, ml: 150, pour: "measured", areas: ["Front well", "Cellar"], fullInFirst: 1,
  }),
  bottle("Tarwick Chilli Tincture", "bitters", {
    code: "BW-313", abv: 45, price: 9, ml: 100, pour: "measured", areas: ["Front well", "Cellar"],
  }),
  bottle("Nutfieldry Almond Syrup", "syrup", {
    code: "BW-320", brix: 65, price: 12, allergens: "almonds", areas: ["Front well", "Dry store"],
  }),
];

type Brewed = Bottle & { pack?: string; supplier?: string };

function brewed(name: string, category: string, facts: Brewed): SimItem {
  const { pack, supplier = BREWER, ...rest } = facts;
  const made = bottle(name, category, { safetyDays: 5, ...rest });
  return { ...made, packs: made.packs.map((form) => ({ ...form, pack: pack ?? form.pack, supplier })) };
}

/** Sold and counted by the bottle or can. */
function bottledEach(name: string, category: string, facts: Brewed): SimItem {
  const made = brewed(name, category, { split: false, perCase: 24, pour: "measured", ...facts });
  return { ...made, base: "each", method: "pieces", packs: made.packs.map((form) => ({ ...form, amount: 1, unit: "each" })) };
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
const MIXER = { perCase: 12, split: false, fullInFirst: 4, areas: ["Front well", "Dry store"] } as const;
const BOTTLES = { areas: ["Back bar", "Walk-in"], fullInFirst: 24 };

const beerAndWine: SimItem[] = [
  withTare(keg("Gannet Lager", { code: "TP-01", abv: 4.8, price: 142, allergens: "barley" }), 13_500),
  withTare(keg("Skerrywell Pale Ale", { code: "TP-02", abv: 5.4, price: 178, allergens: "barley" }), 13_500),
  bottledEach("Mudlarker Stout", "beer", { code: "TP-11", abv: 5.6, price: 46, pack: "12 oz bottle", allergens: "barley", ...BOTTLES }),
  bottledEach("Ropeyard Cider", "beer", { code: "TP-12", abv: 5, price: 44, pack: "12 oz bottle", allergens: "sulphites", ...BOTTLES }),
  bottledEach("Lowwater Zero Lager", "beer", { code: "TP-13", abv: 0.4, price: 38, pack: "12 oz bottle", allergens: "barley", ...BOTTLES }),
  brewed("Bellancroft Sparkling Brut", "wine", { code: "TP-21", abv: 11.5, price: 12.5, ...WINE, ...WINE_AREAS }),
  brewed("Grayfenny White", "wine", { code: "TP-22", abv: 12.5, price: 11, ...WINE, ...WINE_AREAS }),
  brewed("Grayfenny Red", "wine", { code: "TP-23", abv: 13.5, price: 11.5, ...WINE, areas: ["Back bar", "Cellar"] }),
  brewed("Grayfenny Rosé", "wine", { code: "TP-24", abv: 12.5, price: 11, ...WINE, ...WINE_AREAS }),
  brewed("Fizzardy Soda Water", "mixer", { code: "TP-31", ml: 1000, price: 1.6, ...MIXER }),
  brewed("Fizzardy Tonic Water", "mixer", { code: "TP-32", ml: 1000, price: 2.1, ...MIXER }),
  brewed("Fizzardy Ginger Beer", "mixer", { code: "TP-33", ml: 1000, price: 2.3, ...MIXER }),
  brewed("Fizzardy Cola", "mixer", { code: "TP-34", ml: 1000, price: 1.7, ...MIXER }),
  bottledEach("Cressholme Still Water", "mixer", { code: "TP-35", price: 21, pack: "500 ml bottle", areas: ["Dry store"] }),
];

/** Cases of bottled beer and water are priced by the case. */
function pricedByCase(item: SimItem): SimItem {
  return item.base !== "each" ? item : { ...item, packs: item.packs.map((form) => ({ ...form, pricePer: "case" })) };
}

export const BOTTLES_AND_KEGS: SimItem[] = [...spirits, ...liqueurs, ...aromatics, ...beerAndWine.map(pricedByCase)];
