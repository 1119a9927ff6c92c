import { type Catalogue, itemNamed } from "#engine/catalogue.ts";
import { type Recipe, recipeInForce } from "#engine/specs/recipe.ts";
import type { BusinessDate } from "#engine/time.ts";

/**
 * What one making asks for. Amounts are in base units; `variance` is of one making, independent of the
 * next one's, `biasSd` is shared by all makings (an estimate that is off is off every time).
 */
export type BillEntry = { item: string; amount: number; variance: number; biasSd: number };

/** Shares of one piece of fruit: `shares` of each of the `parts`, by what the cut gives. */
export type CutAsk = {
  source: string;
  gives: string;
  amount: number;
  parts: readonly string[];
  shares: number;
  /** Of the shares, one making apart from the next. */
  variance: number;
  /** Share by which a day's fruit may give more or less than it should, where that is not in `variance`. */
  yieldSd: number;
};

/** item → amount, as a sparse vector, with what is cut from fruit kept apart for the shared-parts rule. */
export type Bill = { items: BillEntry[]; cuts: CutAsk[] };

export type BillOptions = {
  date: BusinessDate;
  /** Of a batch the yield's spread is in its amount already. */
  isBatch?: boolean;
  /** Open every prep up to its inputs, stocked ones too. */
  raw?: boolean;
};

/** A prep that is made, in the end, of itself. */
export class PrepCycleError extends Error {
  readonly path: readonly string[];
  constructor(path: readonly string[]) {
    super(`A prep is made of itself: ${path.join(" → ")}. Take one of these lines out of its spec.`);
    this.name = "PrepCycleError";
    this.path = path;
  }
}

/** An amount of one item, with how far it may be off. */
export type Portion = { item: string; amount: number; variance: number; biasSd: number };

/**
 * The bill of a list of portions on a date: preps made to order are opened up to their inputs, at any
 * depth, and what a cut gives is asked of its fruit; stocked preps stay as they are unless `raw`.
 *
 * Throws PrepCycleError, naming the path, when a prep is made of itself.
 */
export function billOf(catalogue: Catalogue, portions: readonly Portion[], options: BillOptions): Bill {
  const collector = new BillCollector(catalogue, options);
  for (const portion of portions) collector.open(portion, []);
  return collector.bill();
}

/**
 * What a batch asks for: the prep itself is opened up though it is stocked; the preps in it are not.
 * The real yield differs from the spec's, so every input is uncertain by the venue's yield spread.
 * Undefined before the prep's first version.
 */
export function billOfBatch(
  catalogue: Catalogue,
  { prep, amount, date }: { prep: string; amount: number; date: BusinessDate },
): Bill | undefined {
  const recipe = recipeInForce(catalogue, prep, date);
  if (recipe === undefined) return undefined;
  const collector = new BillCollector(catalogue, { date, isBatch: true });
  const sd = amount * catalogue.venue.uncertainty.yield;
  collector.openRecipe(recipe, { item: prep, amount, variance: sd * sd, biasSd: 0 }, []);
  return collector.bill();
}

class BillCollector {
  readonly #catalogue: Catalogue;
  readonly #options: BillOptions;
  readonly #items = new Map<string, BillEntry>();
  readonly #cuts = new Map<string, CutAsk>();

  constructor(catalogue: Catalogue, options: BillOptions) {
    this.#catalogue = catalogue;
    this.#options = options;
  }

  open(portion: Portion, path: readonly string[]): void {
    const item = itemNamed(this.#catalogue, portion.item);
    const recipe =
      item.stocked && !this.#options.raw
        ? undefined
        : recipeInForce(this.#catalogue, portion.item, this.#options.date);
    if (recipe === undefined) this.#add(portion);
    else this.openRecipe(recipe, portion, path);
  }

  openRecipe(recipe: Recipe, portion: Portion, path: readonly string[]): void {
    if (path.includes(portion.item)) {
      throw new PrepCycleError([...path.slice(path.indexOf(portion.item)), portion.item]);
    }
    if (recipe.cut !== undefined) this.#addCut(recipe.cut, portion);
    for (const input of recipe.inputs) {
      const ratio = input.perUnit;
      this.open(
        {
          item: input.item,
          amount: portion.amount * ratio,
          variance: portion.variance * ratio * ratio,
          biasSd: portion.biasSd * ratio,
        },
        [...path, portion.item],
      );
    }
  }

  bill(): Bill {
    return { items: [...this.#items.values()], cuts: [...this.#cuts.values()] };
  }

  #add(portion: Portion): void {
    const entry = this.#items.get(portion.item);
    if (entry === undefined) {
      this.#items.set(portion.item, { ...portion });
      return;
    }
    entry.amount += portion.amount;
    entry.variance += portion.variance;
    entry.biasSd += portion.biasSd;
  }

  #addCut(cut: NonNullable<Recipe["cut"]>, portion: Portion): void {
    const shares = portion.amount / cut.perPiece;
    const variance = (portion.variance + portion.biasSd ** 2) / cut.perPiece ** 2;
    const asked = this.#cuts.get(portion.item);
    if (asked === undefined) {
      const { source, parts } = cut;
      const yieldSd = this.#options.isBatch ? 0 : this.#catalogue.venue.uncertainty.yield;
      this.#cuts.set(portion.item, {
        source,
        gives: portion.item,
        parts,
        amount: portion.amount,
        shares,
        variance,
        yieldSd,
      });
      return;
    }
    asked.amount += portion.amount;
    asked.shares += shares;
    asked.variance += variance;
  }
}
