import type { Catalogue } from "#engine/catalogue.ts";
import { SaleReader, sharedChangeDates, type UnmappedSale } from "#engine/sales/asks.ts";
import { OpenedItems } from "#engine/sales/opened-items.ts";
import { PairPlaces } from "#engine/sales/packed/pairs.ts";
import type { DayTally } from "#engine/sales/packed/tally.ts";
import type { TextTable } from "#engine/sales/packed/texts.ts";
import { type Change, changeBy, NONE, Recipes, type Served } from "#engine/sales/recipes.ts";
import type { BusinessDate } from "#engine/time.ts";

type RingState = ReturnType<SaleReader["stateOf"]>;

/** What a ring name is between two changes, numbered among all such stretches of all ring names. */
type Stretch = { number: number; ringName: string; date: BusinessDate; state: RingState | undefined };

type NumberedRing = {
  name: string;
  lastDate: BusinessDate;
  last: Stretch | undefined;
  /** By the number that the reader has for the time between two changes. */
  stretches: Stretch[];
};

/** What is sold, and how much of it the book knows. */
export type Coverage = {
  quantity: number;
  mappedQuantity: number;
  netMinor: number;
  mappedNetMinor: number;
};

/**
 * Expected use of items from the tallies of whole business days, as expectedUse gives it for days that no count divides.
 *
 * Made for a year at a time: what is taken is added up by day first, and preps are opened up once a day for all drinks
 * together, which comes to the same because a bill grows in proportion to what it is made from.
 */
export class TallyUse {
  readonly items: readonly string[];
  readonly coverage: Coverage = { quantity: 0, mappedQuantity: 0, netMinor: 0, mappedNetMinor: 0 };
  readonly unmapped = new Map<string, UnmappedSale>();
  readonly #catalogue: Catalogue;
  readonly #reader: SaleReader;
  readonly #texts: TextTable;
  readonly #itemNumbers: Map<string, number>;
  /** By the number of the ring name. */
  readonly #rings: NumberedRing[] = [];
  /** By the number of their text. */
  readonly #changes: Change[] = [];
  #stretchCount = 0;
  readonly #recipes: Recipes;
  /** Stretches with the modifiers they were sold with, and what is taken for each. */
  readonly #pairs = new PairPlaces();
  readonly #recipeOf: number[] = [];
  readonly #addedOf: number[] = [];
  readonly #timesOf: number[] = [];
  readonly #sharedDates: readonly BusinessDate[];
  #opened: { epoch: number; items: OpenedItems } | undefined;
  readonly #taken: Float64Array;

  constructor(catalogue: Catalogue, texts: TextTable) {
    this.#catalogue = catalogue;
    this.#reader = new SaleReader(catalogue, {});
    this.#texts = texts;
    this.items = [...catalogue.items.keys()];
    this.#itemNumbers = new Map(this.items.map((item, number) => [item, number]));
    this.#recipes = new Recipes(catalogue, this.#itemNumbers);
    this.#taken = new Float64Array(this.items.length);
    this.#sharedDates = [...sharedChangeDates(catalogue)].sort();
  }

  /**
   * Adds what a day's sales should have used to `use`, an amount in base units for each of `items`.
   *
   * `isCounted` says that the day also counts for `coverage` and `unmapped`.
   */
  addDay(businessDate: BusinessDate, tally: DayTally, use: Float64Array, isCounted = false): void {
    if (tally.count === 0) return;
    const { count, ringName, modifiers, quantity, netMinor } = tally;
    for (let place = 0; place < count; place += 1) {
      const stretch = this.#stretchOf(ringName[place] as number, businessDate);
      if (isCounted) this.#count(stretch, quantity[place] as number, netMinor[place] as number);
      const pair = this.#pairOf(stretch, modifiers[place] as number);
      const recipe = this.#recipeOf[pair] as number;
      if (recipe === NONE) continue;
      const times = (this.#timesOf[pair] as number) * (quantity[place] as number);
      const added = this.#addedOf[pair] as number;
      this.#recipes.sell(recipe, times);
      if (added !== NONE) this.#recipes.sell(added, times);
    }
    const taken = this.#taken.fill(0);
    this.#recipes.pourInto(taken);
    this.#openedOn(businessDate).add(taken, use);
  }

  /** Counts a day's sales for `coverage` and `unmapped` only. */
  countDay(businessDate: BusinessDate, tally: DayTally): void {
    const { count, ringName, quantity, netMinor } = tally;
    for (let place = 0; place < count; place += 1) {
      const stretch = this.#stretchOf(ringName[place] as number, businessDate);
      this.#count(stretch, quantity[place] as number, netMinor[place] as number);
    }
  }

  #count(stretch: Stretch, quantity: number, netMinor: number): void {
    stretch.state ??= this.#reader.stateOf(stretch.ringName, stretch.date);
    const { state } = stretch;
    if (state === "ignore") return;
    const { coverage } = this;
    coverage.quantity += quantity;
    coverage.netMinor += netMinor;
    if (state === "mapped") {
      coverage.mappedQuantity += quantity;
      coverage.mappedNetMinor += netMinor;
    } else this.#countUnmapped(stretch.ringName, quantity, netMinor, state);
  }

  #countUnmapped(ringName: string, quantity: number, netMinor: number, reason: UnmappedSale["reason"]): void {
    const held = this.unmapped.get(ringName) ?? { ringName, quantity: 0, netMinor: 0, reason };
    held.quantity += quantity;
    held.netMinor += netMinor;
    this.unmapped.set(ringName, held);
  }

  #stretchOf(ringName: number, businessDate: BusinessDate): Stretch {
    let ring = this.#rings[ringName];
    if (ring === undefined) {
      ring = { name: this.#texts.textOf(ringName), lastDate: "", last: undefined, stretches: [] };
      this.#rings[ringName] = ring;
    }
    if (ring.lastDate === businessDate && ring.last !== undefined) return ring.last;
    const epoch = this.#reader.epochOf(ring.name, businessDate);
    let stretch = ring.stretches[epoch];
    if (stretch === undefined) {
      stretch = { number: this.#stretchCount, ringName: ring.name, date: businessDate, state: undefined };
      this.#stretchCount += 1;
      ring.stretches[epoch] = stretch;
    }
    ring.lastDate = businessDate;
    ring.last = stretch;
    return stretch;
  }

  #pairOf(stretch: Stretch, modifiers: number): number {
    const pairs = this.#pairs;
    const count = pairs.count;
    const pair = pairs.placeOf(stretch.number, modifiers);
    if (pair === count) {
      const served = this.#servedOf(stretch, modifiers);
      this.#recipeOf.push(served?.recipe ?? NONE);
      this.#addedOf.push(served?.added ?? NONE);
      this.#timesOf.push(served?.times ?? 0);
    }
    return pair;
  }

  #servedOf({ ringName, date }: Stretch, modifiers: number): Served | undefined {
    const sold = this.#reader.linesOf(ringName, date);
    if (sold === undefined) return undefined;
    let change = this.#changes[modifiers];
    if (change === undefined) {
      change = changeBy(this.#reader.effectsOf(this.#texts.textOf(modifiers)));
      this.#changes[modifiers] = change;
    }
    return this.#recipes.served(sold, change);
  }

  #openedOn(date: BusinessDate): OpenedItems {
    let epoch = 0;
    while (epoch < this.#sharedDates.length && (this.#sharedDates[epoch] as string) <= date) epoch += 1;
    if (this.#opened?.epoch !== epoch)
      this.#opened = { epoch, items: new OpenedItems(this.#catalogue, date, this.#itemNumbers) };
    return this.#opened.items;
  }
}
