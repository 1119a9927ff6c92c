import type { KnownWords } from "#engine/known-words/known-words.ts";

/** Allergens as Annex II of Regulation (EU) No 1169/2011 has them in German, with their kinds, in the plural and the singular. */
const ALLERGENS = {
  gluten: "Gluten",
  "cereals containing gluten": "glutenhaltiges Getreide",
  wheat: "Weizen",
  rye: "Roggen",
  barley: "Gerste",
  oats: "Hafer",
  spelt: "Dinkel",
  kamut: "Kamut",
  crustaceans: "Krebstiere",
  egg: "Ei",
  eggs: "Eier",
  fish: "Fisch",
  peanuts: "Erdnüsse",
  peanut: "Erdnuss",
  soybeans: "Sojabohnen",
  soya: "Soja",
  soy: "Soja",
  milk: "Milch",
  lactose: "Laktose",
  nuts: "Schalenfrüchte",
  "tree nuts": "Schalenfrüchte",
  almonds: "Mandeln",
  almond: "Mandel",
  hazelnuts: "Haselnüsse",
  hazelnut: "Haselnuss",
  walnuts: "Walnüsse",
  walnut: "Walnuss",
  cashews: "Cashewnüsse",
  "cashew nuts": "Cashewnüsse",
  pecans: "Pekannüsse",
  "pecan nuts": "Pekannüsse",
  "brazil nuts": "Paranüsse",
  pistachios: "Pistazien",
  "pistachio nuts": "Pistazien",
  "macadamia nuts": "Macadamianüsse",
  macadamias: "Macadamianüsse",
  celery: "Sellerie",
  mustard: "Senf",
  sesame: "Sesam",
  "sesame seeds": "Sesamsamen",
  sulphites: "Sulfite",
  sulfites: "Sulfite",
  "sulphur dioxide": "Schwefeldioxid",
  "sulphur dioxide and sulphites": "Schwefeldioxid und Sulfite",
  lupin: "Lupinen",
  molluscs: "Weichtiere",
  mollusks: "Weichtiere",
};

/** What a fruit, an egg or a herb is taken apart into. */
const PARTS = {
  skin: "Schale",
  peel: "Schale",
  flesh: "Fruchtfleisch",
  white: "Eiweiß",
  yolk: "Eigelb",
  leaf: "Blatt",
  leaves: "Blätter",
  stem: "Stiel",
};

/** The usual categories of a bar, and those of what it makes. */
const CATEGORIES = {
  spirit: "Spirituose",
  liqueur: "Likör",
  vermouth: "Wermut",
  bitters: "Bitter",
  wine: "Wein",
  beer: "Bier",
  mixer: "Filler",
  produce: "Frischware",
  "dry goods": "Trockenwaren",
  syrup: "Sirup",
  juice: "Saft",
  cordial: "Cordial",
  infusion: "Infusion",
  "batched drink": "vorgemischter Drink",
  prep: "Zubereitung",
  garnish: "Garnitur",
  water: "Wasser",
};

/** What else is typed for an allergen, folded: cautions must see it too. */
const TYPED_ALLERGENS = {
  hühnerei: "egg",
  eiweiß: "egg",
  eigelb: "egg",
  nuss: "nuts",
  nüsse: "nuts",
  schalenfrucht: "nuts",
  milchprodukte: "milk",
  sahne: "milk",
  sulfit: "sulphites",
  schwefel: "sulphites",
  weichtier: "molluscs",
  krebstier: "crustaceans",
  lupine: "lupin",
  weizenmehl: "wheat",
};

export const GERMAN_TYPED: Partial<KnownWords> = { allergen: TYPED_ALLERGENS };

export const GERMAN: KnownWords = { allergen: ALLERGENS, part: PARTS, category: CATEGORIES };
