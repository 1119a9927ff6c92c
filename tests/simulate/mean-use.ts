import { newBoard } from "./board.ts";
import type { Catalogue, Day, SimDrink } from "./catalogue.ts";
import { inBase, versionOn } from "./catalogue.ts";
import { type Ask, pourAsks, prepAsks, serveAsks } from "./recipe.ts";

/** Mean use of an average day, by item, preps and their inputs included. */
export type MeanUse = ReadonlyMap<string, number>;

export type Sellable =
  | { kind: "drink"; drink: SimDrink; weight: number }
  | { kind: "pour"; pour: Catalogue["pours"][number]; weight: number };

/** What the menu offers on a day. */
export function menuOn(catalogue: Catalogue, day: Day): Sellable[] {
  const drinks = catalogue.drinks
    .filter((drink) => (drink.onMenuFromDay ?? -90) <= day && day <= (drink.onMenuUntilDay ?? 9999))
    .filter((drink) => versionOn(drink.versions, day) !== undefined)
    .map((drink) => ({ kind: "drink" as const, drink, weight: drink.weight }));
  const pours = catalogue.pours.map((pour) => ({ kind: "pour" as const, pour, weight: pour.weight }));
  return [...drinks, ...pours];
}

export function ringsOf(drink: SimDrink): { name: string; share: number; serves: number }[] {
  const rings = drink.rings ?? [{ name: drink.name, share: 1 }];
  return rings.map(({ name, share, serves = 1 }) => ({ name, share, serves }));
}

export function pourAmount({ amount, unit }: Catalogue["pours"][number]): number {
  return amount === undefined || unit === undefined ? 1 : inBase(amount, unit);
}

/** Guests order one or two of a thing; on average so many. */
const MEAN_QUANTITY = 1.12;

export function meanUseOn(catalogue: Catalogue, day: Day): MeanUse {
  const menu = menuOn(catalogue, day);
  const total = menu.reduce((sum, { weight }) => sum + weight, 0);
  const uses = new Map<string, number>();
  const board = newBoard(catalogue, day);
  const take = (asks: readonly Ask[], times: number) => {
    for (const { how, item, amount } of asks) {
      if (how === "cut") board.ask(item, amount * times);
      else uses.set(item, (uses.get(item) ?? 0) + amount * times);
    }
  };

  for (const sold of menu) {
    const serves = (catalogue.drinksPerDay * sold.weight * MEAN_QUANTITY) / total;
    if (sold.kind === "pour") take(pourAsks(sold.pour.item, pourAmount(sold.pour)), serves);
    else {
      const perSale = ringsOf(sold.drink).reduce((sum, { share, serves: each }) => sum + share * each, 0);
      take(serveAsks({ catalogue, drink: sold.drink, day, modifiers: [] }), serves * perSale);
    }
  }
  // Backwards, so that a syrup's own need is known before its inputs are added up.
  for (const { name } of catalogue.preps.toReversed()) {
    const used = uses.get(name) ?? 0;
    if (used > 0) take(prepAsks(catalogue, name, used, day), 1);
  }
  for (const source of board.sources()) uses.set(source, (uses.get(source) ?? 0) + board.pieces(source));
  return uses;
}
