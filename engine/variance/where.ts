import { groupBy, itemNamed } from "#engine/catalogue.ts";
import type { Facts } from "#engine/facts.ts";
import type { DrinkScene, Scene } from "#engine/variance/causes/scene.ts";

/** What is unexplained in one part of the bar, at cost in major units, and its standard uncertainty. */
export type Part = { name: string; items: number; cost: number; sd: number };

/** A drink whose items are off together, in its own proportions. */
export type Misfit = {
  drink: string;
  /** Serves' worth of its items beyond (or, negative, below) what its sales explain. */
  serves: number;
  sd: number;
  ratio: number;
};

export type Where = { categories: Part[]; areas: Part[]; drinks: Misfit[] };

type Row = { item: string; category: string; unexplained: number; sd: number; cost: number | null };

/** Beyond this many standard uncertainties a drink's use does not fit. */
const LEAST_RATIO = 3;
const LEAST_SERVES = 3;
const MOST_DRINKS = 8;

/**
 * Where the unexplained lies: by category, by area, by drink.
 *
 * An item that stands in several areas is told under the one it is listed in first, where it is poured. Parts of a
 * bar add up without regard to sign of their items: 20 missing and 20 too many make 0 with their uncertainty.
 */
export function whereItIs(
  facts: Pick<Facts, "book">,
  items: readonly Row[],
  scene: Scene | undefined,
): Where {
  const areaOf = new Map<string, string>();
  for (const { area, item } of facts.book.areas) if (!areaOf.has(item)) areaOf.set(item, area);
  return {
    categories: partsOf(items, ({ category }) => category),
    areas: partsOf(items, ({ item }) => areaOf.get(item) ?? "no area"),
    drinks: scene === undefined ? [] : drinksThatDoNotFit(scene),
  };
}

function partsOf(items: readonly Row[], nameOf: (row: Row) => string): Part[] {
  return [...groupBy(items, nameOf)]
    .map(([name, rows]) => ({
      name,
      items: rows.length,
      cost: rows.reduce((sum, { cost }) => sum + (cost ?? 0), 0),
      sd: Math.hypot(...rows.map(costSd)),
    }))
    .sort((a, b) => Math.abs(b.cost) - Math.abs(a.cost));
}

function costSd({ cost, unexplained, sd }: Row): number {
  return cost === null || unexplained === 0 ? 0 : Math.abs(cost / unexplained) * sd;
}

/** Where one item makes up more of it than this, the item is off and not the drink. */
const MOST_OF_ONE = 0.75;
/** Nothing is known better than to a few ml or g or a piece. */
const LEAST_SD = { ml: 5, g: 5, each: 0.5 } as const;

/**
 * Each drink taken by itself: the number of serves by which its items together are off, by weighted least squares
 * over the items it uses. Three items each off by ten serves' worth stand out though none of them does alone.
 */
function drinksThatDoNotFit({ facts, drinks, items }: Scene): Misfit[] {
  const least = (item: string) => LEAST_SD[itemNamed(facts.catalogue, item).base];
  return [...drinks.values()]
    .flatMap((sold) => fitOf(sold, items, least) ?? [])
    .filter(({ serves, ratio }) => Math.abs(serves) >= LEAST_SERVES && Math.abs(ratio) >= LEAST_RATIO)
    .sort((a, b) => Math.abs(b.ratio) - Math.abs(a.ratio))
    .slice(0, MOST_DRINKS);
}

function fitOf(
  { drink, serves, perServe }: DrinkScene,
  items: Scene["items"],
  leastSd: (item: string) => number,
): Misfit | undefined {
  if (serves.now <= 0) return undefined;
  let along = 0;
  let length2 = 0;
  let largest = 0;
  for (const [item, amount] of perServe) {
    const now = items.get(item)?.now;
    if (now === undefined) continue;
    const sd = Math.max(now.sd, leastSd(item));
    const own = (amount * now.unexplained) / sd ** 2;
    along += own;
    largest = Math.max(largest, Math.abs(own));
    length2 += (amount / sd) ** 2;
  }
  if (length2 <= 0 || largest > MOST_OF_ONE * Math.abs(along)) return undefined;
  return { drink, serves: along / length2, sd: 1 / Math.sqrt(length2), ratio: along / Math.sqrt(length2) };
}
