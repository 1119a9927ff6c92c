import { baseAmount, type Catalogue } from "#engine/catalogue.ts";
import type { SoldLines } from "#engine/sales/asks.ts";
import type { Modifier } from "#engine/sales/ring.ts";
import { modifyLines, type ServeLine, servePortions } from "#engine/specs/serve.ts";

/** What one sale takes of the items its spec names, by number and in base units, before preps are opened up. */
type Recipe = { items: number[]; amounts: number[] };

/** What is sold before any modifier, looked through once for all of them. */
export type Plain = { sold: SoldLines; recipe: number; hasTop: boolean; items: ReadonlySet<string> };

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
  /** Items that one of them puts into a drink. */
  brought: ReadonlySet<string>;
};

export function changeBy(effects: readonly Modifier[]): Change {
  const adds: Modifier[] = [];
  const removes: Modifier[] = [];
  const others: Modifier[] = [];
  const brought = new Set<string>();
  let factor = 1;
  for (const effect of effects) {
    if (effect.effect === "times" && effect.item === null) factor *= effect.factor ?? 1;
    else if (effect.effect === "add") adds.push(effect);
    else if (effect.effect === "remove") removes.push(effect);
    else if (effect.effect !== "none") others.push(effect);
    const item = effect.effect === "swap" ? effect.with : effect.effect === "add" ? effect.item : null;
    if (item !== null) brought.add(item);
  }
  return { effects, factor, adds, removes, others, brought };
}

/** The recipes of drinks as they are sold, each reckoned once. */
export class Recipes {
  readonly #catalogue: Catalogue;
  readonly #numbers: ReadonlyMap<string, number>;
  /** All recipes one behind the other: recipe n takes the items from #starts[n] on, up to #starts[n + 1]. */
  readonly #starts: number[] = [0];
  #items = new Int32Array(1024);
  #amounts = new Float64Array(1024);
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

  plain(sold: SoldLines): Plain {
    const { drink, lines } = sold;
    const recipe = this.#add(this.#recipeOf(drink, modifyLines(lines, [])));
    return { sold, recipe, hasTop: hasTop(lines), items: new Set(lines.map(({ item }) => item)) };
  }

  /** Most modifiers change nothing in most drinks, or make the whole drink larger: then the plain serve is used again. */
  served(plain: Plain, change: Change): Served {
    const { drink, serves, lines } = plain.sold;
    const { effects, factor, adds, removes } = change;
    const takesOut = removes.length > 0 && mayTouch(plain, change, removes);
    // An order in which changes apply, and a glass that is topped up, are left to the rule itself.
    const needsRule =
      (plain.hasTop && (takesOut || adds.length > 0)) ||
      (takesOut && adds.length > 0) ||
      mayTouch(plain, change, change.others);
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
    const starts = this.#starts;
    const items = this.#items;
    const amounts = this.#amounts;
    for (const recipe of this.#soldOnes) {
      const times = sold[recipe] as number;
      if (times === 0) continue;
      sold[recipe] = 0;
      const end = starts[recipe + 1] as number;
      for (let at = starts[recipe] as number; at < end; at += 1) {
        const item = items[at] as number;
        taken[item] = (taken[item] as number) + times * (amounts[at] as number);
      }
    }
    this.#soldOnes.length = 0;
  }

  #add({ items, amounts }: Recipe): number {
    const number = this.#starts.length - 1;
    const start = this.#starts[number] as number;
    const end = start + items.length;
    if (end > this.#items.length) {
      this.#items = longer(this.#items, 2 * end);
      this.#amounts = longer(this.#amounts, 2 * end);
    }
    this.#items.set(items, start);
    this.#amounts.set(amounts, start);
    this.#starts.push(end);
    if (number === this.#sold.length) this.#sold = longer(this.#sold, 2 * number);
    return number;
  }

  #without(plain: number, removes: readonly Modifier[]): number {
    const gone = removes.map(({ item }) => (item === null ? NONE : this.#numberOf(item)));
    const recipe: Recipe = { items: [], amounts: [] };
    const end = this.#starts[plain + 1] as number;
    for (let at = this.#starts[plain] as number; at < end; at += 1) {
      const item = this.#items[at] as number;
      if (gone.includes(item)) continue;
      recipe.items.push(item);
      recipe.amounts.push(this.#amounts[at] as number);
    }
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

function hasTop(lines: readonly ServeLine[]): boolean {
  for (const { amount, unit } of lines) if (amount === null || unit === "top") return true;
  return false;
}

/** Whether one of some effects changes anything: an item of the drink, or one that another modifier brings. */
function mayTouch({ items }: Plain, { brought }: Change, effects: readonly Modifier[]): boolean {
  for (const { item } of effects) if (item !== null && (items.has(item) || brought.has(item))) return true;
  return false;
}

function longer<T extends Int32Array | Float64Array>(column: T, length: number): T {
  const copy = new (column.constructor as new (length: number) => T)(length);
  copy.set(column);
  return copy;
}
