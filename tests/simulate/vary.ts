import type { Catalogue } from "./catalogue.ts";
import { randomStream } from "./random.ts";

/**
 * Another bar of the same kind: busier or quieter, with other favourites, prices and fruit.
 *
 * Names, specs and suppliers stay, so that faults planted by name still apply. The same seed gives the same bar.
 */
export function variedCatalogue({ catalogue, seed }: { catalogue: Catalogue; seed: number }): Catalogue {
  const random = randomStream(seed, "catalogue");
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  return {
    ...catalogue,
    drinksPerDay: Math.round(catalogue.drinksPerDay * between(0.75, 1.3)),
    drinks: catalogue.drinks.map((drink) => ({ ...drink, weight: drink.weight * random.gamma(8) })),
    pours: catalogue.pours.map((pour) => ({ ...pour, weight: pour.weight * random.gamma(8) })),
    cuts: catalogue.cuts.map((cut) => ({
      ...cut,
      perPiece: Number((cut.perPiece * between(0.9, 1.1)).toFixed(2)),
    })),
    items: catalogue.items.map((item) => ({
      ...item,
      packs: item.packs.map((pack) => ({
        ...pack,
        price: Number((pack.price * between(0.85, 1.2)).toFixed(2)),
      })),
    })),
  };
}
