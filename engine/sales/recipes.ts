import { baseAmount, type Catalogue } from "#engine/catalogue.ts";
import type { SoldLines } from "#engine/sales/asks.ts";
import type { Modifier } from "#engine/sales/ring.ts";
import { modifyLines, type ServeLine, servePortions } from "#engine/specs/serve.ts";

/** What one sale takes of the items its spec names, by number and in base units, before preps are opened up. */
type Recipe = { items: number[]; amounts: number[] };

/** No recipe. */
export const NONE = -1;

/** What is sold: so many times a recipe, and as many times what is added to it, both by number. */
export type Served = { recipe: number; added: number; times: number };

/** A cell of modifiers, looked through once for all drinks that come with it. */
export type Change = {
  effects: readonly Modifier[];
  /** Of the whole drink. */
  factor: number;
  adds: readonly Modifier[];
  /** What changes a drink only if it has the item. */
  removes: readonly Modifier[];
  others: readonly Modifier[];
};

export function changeBy(effects: readonly Modifier[]): Change {
  const adds: Modifier[] = [];
  const removes: Modifier[] = [];
  const others: Modifier[] = [];
  let factor = 1;
  for (const effect of effects) {
    if (effect.effect === "times" && effect.item === null) factor *= effect.factor ?? 1;
    else if (effect.effect === "add") adds.push(effect);
    else if (effect.effect === "remove") removes.push(effect);
    else if (effect.effect !== "none") others.push(effect);
  }
  return { effects, factor, adds, removes, others };
}

/** The recipes of drinks as they are sold, each reckoned once. */
export class Recipes {
  readonly #catalogue: Catalogue;
  readonly #numbers: ReadonlyMap<string, number>;
  readonly #recipes: Recipe[] = [];
  /** The plain serve of a list of lines, shared by all modifiers that change nothing in it. */
  readonly #plain = new Map<readonly ServeLine[], { recipe: number; hasTop: boolean }>();
  readonly #added = new Map<Change, number>();
  readonly #poured = new Map<ServeLine, { item: number; amount: number }>();
  /** How often each recipe was sold since `pourInto`. */
  #sold = new Float64Array(256);
  /** The recipes with a number other than 0 there; one sold and taken back may stand here twice. */
  readonly #soldOnes: number[] = [];

  /** `numbers` has a number for each item. */
  constructor(catalogue: Catalogue, numbers: ReadonlyMap<string, number>) {
    this.#catalogue = catalogue;
    this.#numbers = numbers;
  }

  /** Most modifiers change nothing in most drinks, or make the whole drink larger: then the plain serve is used again. */
  served(sold: SoldLines, change: Change): Served {
    const { drink, serves, lines } = sold;
    const { effects, factor, adds, removes, others } = change;
    const plain = this.#plainOf(sold);
    const touches = (effect: Modifier) => mayTouch(lines, effects, effect);
    const takesOut = removes.some(touches);
    // An order in which changes apply, and a glass that is topped up, are left to the rule itself.
    const needsRule =
      (plain.hasTop && (takesOut || adds.length > 0)) ||
      (takesOut && adds.length > 0) ||
      others.some(touches);
    if (needsRule) {
      const recipe = this.#add(this.#recipeOf(drink, modifyLines(lines, effects)));
      return { recipe, added: NONE, times: serves };
    }
    const recipe = takesOut ? this.#without(plain.recipe, removes) : plain.recipe;
    return { recipe, added: this.#addedBy(change), times: serves * factor };
  }

  sell(recipe: number, times: number): void {
    const before = this.#sold[recipe] as number;
    if (before === 0) this.#soldOnes.push(recipe);
    this.#sold[recipe] = before + times;
  }

  /** Adds to `taken`, by item, what was sold since the last time. */
  pourInto(taken: Float64Array): void {
    const sold = this.#sold;
    for (const recipe of this.#soldOnes) {
      const times = sold[recipe] as number;
      if (times === 0) continue;
      sold[recipe] = 0;
      const { items, amounts } = this.#recipes[recipe] as Recipe;
      for (let at = 0; at < items.length; at += 1) {
        const item = items[at] as number;
        taken[item] = (taken[item] as number) + times * (amounts[at] as number);
      }
    }
    this.#soldOnes.length = 0;
  }

  #plainOf({ drink, lines }: SoldLines): { recipe: number; hasTop: boolean } {
    const known = this.#plain.get(lines);
    if (known !== undefined) return known;
    const recipe = this.#add(this.#recipeOf(drink, modifyLines(lines, [])));
    const plain = { recipe, hasTop: hasTop(lines) };
    this.#plain.set(lines, plain);
    return plain;
  }

  #add(recipe: Recipe): number {
    const number = this.#recipes.length;
    this.#recipes.push(recipe);
    if (number === this.#sold.length) {
      const larger = new Float64Array(2 * number);
      larger.set(this.#sold);
      this.#sold = larger;
    }
    return number;
  }

  #without(plain: number, removes: readonly Modifier[]): number {
    const { items, amounts } = this.#recipes[plain] as Recipe;
    const recipe = { items: items.slice(), amounts: amounts.slice() };
    for (const { item } of removes) if (item !== null) takeOut(recipe, this.#numberOf(item));
    return this.#add(recipe);
  }

  #addedBy(change: Change): number {
    if (change.adds.length === 0) return NONE;
    const known = this.#added.get(change);
    if (known !== undefined) return known;
    const added = this.#add(this.#recipeOf(null, modifyLines([], change.adds)));
    this.#added.set(change, added);
    return added;
  }

  #recipeOf(drink: string | null, lines: ReturnType<typeof modifyLines>): Recipe {
    const recipe: Recipe = { items: [], amounts: [] };
    if (hasTop(lines.map(({ line }) => line))) {
      const held = drink === null ? undefined : this.#catalogue.drinks.get(drink);
      for (const { item, amount } of servePortions(this.#catalogue, held, lines)) {
        recipe.items.push(this.#numberOf(item));
        recipe.amounts.push(amount);
      }
      return recipe;
    }
    for (const { line, factor } of lines) {
      const { item, amount } = this.#pouredOf(line);
      recipe.items.push(item);
      recipe.amounts.push(amount * factor);
    }
    return recipe;
  }

  /** A line that says its amount; the lines of a spec come with many modifiers, and are reckoned once. */
  #pouredOf(line: ServeLine): { item: number; amount: number } {
    const known = this.#poured.get(line);
    if (known !== undefined) return known;
    const { item, amount, unit } = line;
    if (amount === null || unit === "top") throw new Error(`How much ${item} tops up depends on the glass.`);
    const poured = {
      item: this.#numberOf(item),
      amount: baseAmount(this.#catalogue, { item, amount, unit }),
    };
    this.#poured.set(line, poured);
    return poured;
  }

  #numberOf(item: string): number {
    const number = this.#numbers.get(item);
    if (number === undefined) throw new Error(`A spec names "${item}", which the catalogue has not.`);
    return number;
  }
}

function hasItem(lines: readonly ServeLine[], item: string | null): boolean {
  for (const line of lines) if (line.item === item) return true;
  return false;
}

function hasTop(lines: readonly ServeLine[]): boolean {
  for (const { amount, unit } of lines) if (amount === null || unit === "top") return true;
  return false;
}

function takeOut({ items, amounts }: Recipe, item: number): void {
  for (let at = items.length - 1; at >= 0; at -= 1) {
    if (items[at] !== item) continue;
    items.splice(at, 1);
    amounts.splice(at, 1);
  }
}

/** Whether a swap, or a factor of one item, changes anything: an item of the drink, or one that another modifier brings. */
function mayTouch(lines: readonly ServeLine[], effects: readonly Modifier[], effect: Modifier): boolean {
  if (hasItem(lines, effect.item)) return true;
  for (const other of effects) {
    const brought = other.effect === "swap" ? other.with : other.effect === "add" ? other.item : null;
    if (brought !== null && brought === effect.item) return true;
  }
  return false;
}
