import type { SimPour } from "../catalogue.ts";

/** What the till sells as items: beer, wine, shots. */
export const POURS: SimPour[] = [
  { ring: "Gannetsea Pint", item: "Gannetsea Lager", amount: 16, unit: "oz", price: 8, weight: 8 },
  { ring: "Gannetsea Half", item: "Gannetsea Lager", amount: 8, unit: "oz", price: 4.5, weight: 1.2 },
  { ring: "Skerrywell PA", item: "Skerrywell Pale Ale", amount: 16, unit: "oz", price: 9, weight: 5.5 },
  { ring: "Stout Btl", item: "Mudlarker Stout", price: 8, weight: 2.2 },
  { ring: "Ropeyard Cider", item: "Ropeyard Cider", price: 8, weight: 2.2 },
  { ring: "NA Beer", item: "Lowwater Zero Lager", price: 7, weight: 1.6 },
  { ring: "White GLS", item: "Grayfenny White", amount: 5, unit: "oz", price: 11, weight: 4.5 },
  { ring: "Red GLS", item: "Grayfenny Red", amount: 5, unit: "oz", price: 11, weight: 4 },
  { ring: "Rose GLS", item: "Grayfenny Rosé", amount: 5, unit: "oz", price: 11, weight: 2.6 },
  { ring: "Sparkling GLS", item: "Bellancroft Sparkling Brut", amount: 5, unit: "oz", price: 12, weight: 3 },
  {
    ring: "Sparkling BTL",
    item: "Bellancroft Sparkling Brut",
    amount: 750,
    unit: "ml",
    price: 54,
    weight: 0.3,
  },
  { ring: "Blanco Shot", item: "Cinderpalm Blanco Agave", amount: 1.5, unit: "oz", price: 9, weight: 2.4 },
  { ring: "Bourbon Neat", item: "Thornquay Bourbon", amount: 2, unit: "oz", price: 11, weight: 2 },
  { ring: "Vodka Shot", item: "Quillmere Vodka", amount: 1.5, unit: "oz", price: 8, weight: 1.8 },
  { ring: "Peated Neat", item: "Ashbarrow Peated Whisky", amount: 2, unit: "oz", price: 18, weight: 0.8 },
  { ring: "Still Water", item: "Cressholme Still Water", price: 4, weight: 2.4 },
  { ring: "Cola", item: "Fizzardy Cola", amount: 8, unit: "oz", price: 4, weight: 2 },
];
