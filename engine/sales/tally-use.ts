import type { Catalogue } from "#engine/catalogue.ts";
import { SaleReader, sharedChangeDates, type UnmappedSale } from "#engine/sales/asks.ts";
import { OpenedItems } from "#engine/sales/opened-items.ts";
import { PairPlaces } from "#engine/sales/packed/pairs.ts";
import type { DayTally } from "#engine/sales/packed/tally.ts";
import type { TextTable } from "#engine/sales/packed/texts.ts";
import { type Change, changeBy, NONE, type Plain, Recipes } from "#engine/sales/recipes.ts";
import type { BusinessDate } from "#engine/time.ts";

type RingState = ReturnType<SaleReader["stateOf"]>;

/** What a ring name is between two changes, numbered among all such stretches of all ring names. */
type Stretch = {
  number: number;
  ringName: string;
  /** A day of it, and the one it ends before (null: it does not end). */
  date: BusinessDate;
  until: BusinessDate | null;
  state: RingState | undefined;
  /** Undefined where it uses nothing. */
  plain: Plain | undefined;
};

type NumberedRing = {
  name: string;
  lastDate: BusinessDate;
  last: Stretch | undefined;
  /** By the number that the reader has for the stretch. */
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
    const recipes = this.#recipes;
    const recipeOf = this.#recipeOf;
    const addedOf = this.#addedOf;
    const timesOf = this.#timesOf;
    for (let place = 0; place < count; place += 1) {
      const stretch = this.#stretchOf(ringName[place] as number, businessDate);
      if (isCounted) this.#count(stretch, quantity[place] as number, netMinor[place] as number);
      const pair = this.#pairOf(stretch, modifiers[place] as number);
      const recipe = recipeOf[pair] as number;
      if (recipe === NONE) continue;
      const times = (timesOf[pair] as number) * (quantity[place] as number);
      const added = addedOf[pair] as number;
      recipes.sell(recipe, times);
      if (added !== NONE) recipes.sell(added, times);
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
    const ring = this.#rings[ringName] ?? this.#ringOf(ringName);
    if (ring.last !== undefined && ring.lastDate === businessDate) return ring.last;
    const stretch = isWithin(ring.last, businessDate) ? ring.last : this.#stretchIn(ring, businessDate);
    ring.lastDate = businessDate;
    ring.last = stretch;
    return stretch;
  }

  #ringOf(ringName: number): NumberedRing {
    const name = this.#texts.textOf(ringName);
    const ring: NumberedRing = { name, lastDate: "", last: undefined, stretches: [] };
    this.#rings[ringName] = ring;
    return ring;
  }

  #stretchIn({ name, stretches }: NumberedRing, date: BusinessDate): Stretch {
    const { number, until } = this.#reader.ownStretch(name, date);
    const known = stretches[number];
    if (known !== undefined) return known;
    const sold = this.#reader.linesOf(name, date);
    const plain = sold === undefined ? undefined : this.#recipes.plain(sold);
    const stretch = { number: this.#stretchCount, ringName: name, date, until, state: undefined, plain };
    this.#stretchCount += 1;
    stretches[number] = stretch;
    return stretch;
  }

  #pairOf({ number, plain }: Stretch, modifiers: number): number {
    const pairs = this.#pairs;
    const count = pairs.count;
    const pair = pairs.placeOf(number, modifiers);
    if (pair === count) {
      const served = plain === undefined ? undefined : this.#recipes.served(plain, this.#changeOf(modifiers));
      this.#recipeOf.push(served?.recipe ?? NONE);
      this.#addedOf.push(served?.added ?? NONE);
      this.#timesOf.push(served?.times ?? 0);
    }
    return pair;
  }

  #changeOf(modifiers: number): Change {
    const known = this.#changes[modifiers];
    if (known !== undefined) return known;
    const change = changeBy(this.#reader.effectsOf(this.#texts.textOf(modifiers)));
    this.#changes[modifiers] = change;
    return change;
  }

  #openedOn(date: BusinessDate): OpenedItems {
    let epoch = 0;
    while (epoch < this.#sharedDates.length && (this.#sharedDates[epoch] as string) <= date) epoch += 1;
    if (this.#opened?.epoch !== epoch)
      this.#opened = { epoch, items: new OpenedItems(this.#catalogue, date, this.#itemNumbers) };
    return this.#opened.items;
  }
}

/** Days mostly come in their order, so that the stretch of the day before is asked first. */
function isWithin(stretch: Stretch | undefined, date: BusinessDate): stretch is Stretch {
  return stretch !== undefined && stretch.date <= date && (stretch.until === null || date < stretch.until);
}
