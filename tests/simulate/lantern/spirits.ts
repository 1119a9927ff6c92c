import type { SimItem, SimPack } from "../catalogue.ts";
import { bottle, onScale, SPIRITS as SUPPLIER } from "./bottle.ts";

const WELL = { areas: ["Front well", "Cellar"], fullInFirst: 1 };

const vodka = bottle("Quillmere Vodka", "spirit", {
  code: "LM-101",
  abv: 40,
  price: 17.5,
  ml: 1000,
  pour: "free",
  twoOpen: true,
  ...WELL,
});
const gin = bottle("Wickerlamp Dry Gin", "spirit", { code: "LM-102", abv: 42, price: 19, ml: 1000, ...WELL });
/** The bar also buys the small bottle when the litre is out. */
gin.packs.push({
  pack: "750 ml",
  amount: 750,
  unit: "ml",
  perCase: 12,
  supplier: SUPPLIER,
  code: "LM-102S",
  price: 15.5,
  pricePer: "container",
  split: true,
});
gin.packs[0] = { ...gin.packs[0], laterPrice: { fromDay: 49, price: 20.25 } } as SimPack;

export const SPIRITS: SimItem[] = [
  vodka,
  gin,
  onScale(bottle("Saltglass Strong Gin", "spirit", { code: "LM-103", abv: 50, price: 34 }), 0.93014, 510),
  bottle("Oarlock White Rum", "spirit", { code: "LM-110", abv: 41, price: 16, ml: 1000, ...WELL }),
  onScale(bottle("Oarlock Aged Rum", "spirit", { code: "LM-111", abv: 40, price: 27 }), 0.94805, 480),
  bottle("Marrowby Overproof Rum", "spirit", { code: "LM-112", abv: 63, price: 31 }),
  bottle("Thornquay Bourbon", "spirit", { code: "LM-120", abv: 45, price: 23.5, ml: 1000, ...WELL }),
  bottle("Thornquay Rye", "spirit", { code: "LM-121", abv: 47, price: 28 }),
  bottle("Ferrowick Blended Whisky", "spirit", { code: "LM-122", abv: 43, price: 24 }),
  onScale(bottle("Ashbarrow Peated Whisky", "spirit", { code: "LM-123", abv: 40, price: 46 }), 0.94805, 495),
  bottle("Cinderpalm Blanco Agave", "spirit", { code: "LM-130", abv: 40.5, price: 25, ml: 1000, ...WELL }),
  bottle("Cinderpalm Smoked Agave", "spirit", { code: "LM-131", abv: 44, price: 38 }),
  bottle("Vantellor Grape Brandy", "spirit", { code: "LM-140", abv: 40.5, price: 29 }),
  bottle("Pomerack Apple Brandy", "spirit", { code: "LM-141", abv: 42, price: 30 }),
];

/** A density on the label's data sheet, or a full bottle once weighed: sugar makes the strength table useless. */
const orange = bottle("Orrindel Orange Liqueur", "liqueur", { code: "LM-201", abv: 40, price: 27 });
const coffee = bottle("Kettlebrine Coffee Liqueur", "liqueur", { code: "LM-202", abv: 25, price: 22 });
export const LIQUEURS: SimItem[] = [
  {
    ...onScale(orange, 1.04, 505),
    densityGPerMl: 1.04,
  },
  {
    ...onScale(coffee, 1.14, 470),
    packs: coffee.packs.map((pack) => ({ ...pack, emptyG: 470, fullG: 1325 })),
  },
  bottle("Brasketto Bitter Aperitif", "liqueur", { code: "LM-203", abv: 24, price: 25 }),
  bottle("Solvinella Spritz Aperitif", "liqueur", { code: "LM-204", abv: 12, price: 19 }),
  bottle("Morvane Cherry Liqueur", "liqueur", { code: "LM-205", abv: 32, price: 29 }),
  bottle("Velderose Elderflower Liqueur", "liqueur", { code: "LM-206", abv: 20, price: 28 }),
  bottle("Monkswick Herbal Liqueur", "liqueur", { code: "LM-207", abv: 52, price: 48 }),
  bottle("Peachcroft Peach Liqueur", "liqueur", { code: "LM-208", abv: 18, price: 17 }),
];

const CHILLED = { areas: ["Prep fridge", "Cellar"], shelfLifeDays: 60 };
export const AROMATICS: SimItem[] = [
  bottle("Dunmarrow Sweet Vermouth", "vermouth", {
    code: "LM-301",
    abv: 16,
    price: 15,
    allergens: "sulphites",
    ...CHILLED,
  }),
  bottle("Dunmarrow Dry Vermouth", "vermouth", {
    code: "LM-302",
    abv: 18,
    price: 14,
    allergens: "sulphites",
    ...CHILLED,
  }),
  bottle("Tarwick Aromatic Bitters", "bitters", {
    code: "LM-311",
    abv: 44,
    price: 11,
    ml: 200,
    pour: "measured",
    areas: ["Front well", "Cellar"],
    fullInFirst: 1,
  }),
  bottle("Tarwick Orange Bitters", "bitters", {
    code: "LM-312",
    abv: 39,
    price: 10,
    ml: 150,
    pour: "measured",
    areas: ["Front well", "Cellar"],
    fullInFirst: 1,
  }),
  bottle("Tarwick Chilli Tincture", "bitters", {
    code: "LM-313",
    abv: 45,
    price: 9,
    ml: 100,
    pour: "measured",
    areas: ["Front well", "Cellar"],
  }),
  bottle("Nutfieldry Almond Syrup", "syrup", {
    code: "LM-320",
    brix: 65,
    price: 12,
    allergens: "almonds",
    areas: ["Front well", "Dry store"],
  }),
];
