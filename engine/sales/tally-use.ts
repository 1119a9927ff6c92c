import { baseAmount, type Catalogue } from "#engine/catalogue.ts";
import { SaleReader, type SoldLines, sharedChangeDates, type UnmappedSale } from "#engine/sales/asks.ts";
import { OpenedItems } from "#engine/sales/opened-items.ts";
import type { DayTally } from "#engine/sales/packed/tally.ts";
import type { TextTable } from "#engine/sales/packed/texts.ts";
import type { Modifier } from "#engine/sales/ring.ts";
import { modifyLines, type ServeLine, servePortions } from "#engine/specs/serve.ts";
import type { BusinessDate } from "#engine/time.ts";

/** What one sale takes of the items its spec names, by number and in base units, before preps are opened up. */
type Taken = { items: readonly number[]; amounts: readonly number[]; times: number };

type RingState = ReturnType<SaleReader["stateOf"]>;

/** A ring name, and what it meant by modifiers and stretch between two changes. */
type NumberedRing = {
  name: string;
  lastDate: BusinessDate;
  lastEpoch: number;
  states: RingState[];
  sold: (SoldLines | null)[];
  /** By the number of the text of the modifiers, then by stretch. */
  byModifiers: (Taken | null)[][];
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
  readonly #effects: (readonly Modifier[])[] = [];
  /** The plain serve of a list of lines, shared by all modifiers that change nothing in it. */
  readonly #plain = new Map<readonly ServeLine[], Taken>();
  readonly #added = new Map<Modifier, { item: number; amount: number } | null>();
  readonly #poured = new Map<ServeLine, { item: number; amount: number }>();
  readonly #sharedDates: readonly BusinessDate[];
  #opened: { epoch: number; items: OpenedItems } | undefined;
  readonly #taken: Float64Array;

  constructor(catalogue: Catalogue, texts: TextTable) {
    this.#catalogue = catalogue;
    this.#reader = new SaleReader(catalogue, {});
    this.#texts = texts;
    this.items = [...catalogue.items.keys()];
    this.#itemNumbers = new Map(this.items.map((item, number) => [item, number]));
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
    const taken = this.#taken.fill(0);
    const { count, ringName, modifiers, quantity, netMinor } = tally;
    for (let place = 0; place < count; place += 1) {
      const ring = this.#ringOf(ringName[place] as number, businessDate);
      if (isCounted) this.#count(ring, businessDate, quantity[place] as number, netMinor[place] as number);
      const sale = this.#takenOf(ring, modifiers[place] as number, businessDate);
      if (sale === null) continue;
      const { items, amounts } = sale;
      const times = sale.times * (quantity[place] as number);
      for (let at = 0; at < items.length; at += 1) {
        const item = items[at] as number;
        taken[item] = (taken[item] as number) + times * (amounts[at] as number);
      }
    }
    this.#openedOn(businessDate).add(taken, use);
  }

  /** Counts a day's sales for `coverage` and `unmapped` only. */
  countDay(businessDate: BusinessDate, tally: DayTally): void {
    const { count, ringName, quantity, netMinor } = tally;
    for (let place = 0; place < count; place += 1) {
      const ring = this.#ringOf(ringName[place] as number, businessDate);
      this.#count(ring, businessDate, quantity[place] as number, netMinor[place] as number);
    }
  }

  #count(ring: NumberedRing, businessDate: BusinessDate, quantity: number, netMinor: number): void {
    let state = ring.states[ring.lastEpoch];
    if (state === undefined) {
      state = this.#reader.stateOf(ring.name, businessDate);
      ring.states[ring.lastEpoch] = state;
    }
    if (state === "ignore") return;
    const { coverage } = this;
    coverage.quantity += quantity;
    coverage.netMinor += netMinor;
    if (state === "mapped") {
      coverage.mappedQuantity += quantity;
      coverage.mappedNetMinor += netMinor;
    } else this.#countUnmapped(ring.name, quantity, netMinor, state);
  }

  #countUnmapped(ringName: string, quantity: number, netMinor: number, reason: UnmappedSale["reason"]): void {
    const held = this.unmapped.get(ringName) ?? { ringName, quantity: 0, netMinor: 0, reason };
    held.quantity += quantity;
    held.netMinor += netMinor;
    this.unmapped.set(ringName, held);
  }

  #ringOf(ringName: number, businessDate: BusinessDate): NumberedRing {
    let ring = this.#rings[ringName];
    if (ring === undefined) {
      const name = this.#texts.textOf(ringName);
      ring = { name, lastDate: "", lastEpoch: 0, states: [], sold: [], byModifiers: [] };
      this.#rings[ringName] = ring;
    }
    if (ring.lastDate !== businessDate) {
      ring.lastDate = businessDate;
      ring.lastEpoch = this.#reader.epochOf(ring.name, businessDate);
    }
    return ring;
  }

  #takenOf(ring: NumberedRing, modifiers: number, businessDate: BusinessDate): Taken | null {
    let byEpoch = ring.byModifiers[modifiers];
    if (byEpoch === undefined) {
      byEpoch = [];
      ring.byModifiers[modifiers] = byEpoch;
    }
    const known = byEpoch[ring.lastEpoch];
    if (known !== undefined) return known;
    let sold = ring.sold[ring.lastEpoch];
    if (sold === undefined) {
      sold = this.#reader.linesOf(ring.name, businessDate) ?? null;
      ring.sold[ring.lastEpoch] = sold;
    }
    const taken = sold === null ? null : this.#takenBy(sold, this.#effectsOf(modifiers));
    byEpoch[ring.lastEpoch] = taken;
    return taken;
  }

  /** Most modifiers change nothing in most drinks, or make the whole drink larger: then the plain serve is used again. */
  #takenBy(sold: SoldLines, effects: readonly Modifier[]): Taken {
    const { drink, serves, lines } = sold;
    let factor = serves;
    let adds = 0;
    let removes = 0;
    let others = 0;
    for (const effect of effects) {
      if (effect.effect === "times" && effect.item === null) factor *= effect.factor ?? 1;
      else if (effect.effect === "add") adds += 1;
      else if (effect.effect === "remove") removes += 1;
      else if (effect.effect !== "none" && mayTouch(lines, effects, effect)) others += 1;
    }
    const plain = this.#plainOf(sold);
    if (adds + removes + others === 0)
      return factor === 1 ? plain : { items: plain.items, amounts: plain.amounts, times: factor };
    // An order in which changes apply, and a glass that is topped up, are left to the rule itself.
    if (others > 0 || (adds > 0 && removes > 0) || hasTop(lines))
      return this.#numbered(drink, modifyLines(lines, effects), serves);
    const taken = { items: plain.items.slice(), amounts: plain.amounts.slice(), times: factor };
    for (const effect of effects) {
      if (effect.effect === "add") this.#addTo(taken, effect);
      if (effect.effect === "remove" && effect.item !== null) takeOut(taken, this.#numberOf(effect.item));
    }
    return taken;
  }

  #plainOf({ drink, lines }: SoldLines): Taken {
    const known = this.#plain.get(lines);
    if (known !== undefined) return known;
    const plain = this.#numbered(drink, modifyLines(lines, []), 1);
    this.#plain.set(lines, plain);
    return plain;
  }

  #addTo(taken: { items: number[]; amounts: number[] }, effect: Modifier): void {
    let line = this.#added.get(effect);
    if (line === undefined) {
      const [added] = modifyLines([], [effect]);
      line = added === undefined ? null : this.#pouredOf(added.line);
      this.#added.set(effect, line);
    }
    if (line === null) return;
    taken.items.push(line.item);
    taken.amounts.push(line.amount);
  }

  #effectsOf(modifiers: number): readonly Modifier[] {
    const known = this.#effects[modifiers];
    if (known !== undefined) return known;
    const effects = this.#reader.effectsOf(this.#texts.textOf(modifiers));
    this.#effects[modifiers] = effects;
    return effects;
  }

  #numbered(drink: string | null, lines: ReturnType<typeof modifyLines>, times: number): Taken {
    const taken = { items: [] as number[], amounts: [] as number[], times };
    if (hasTop(lines.map(({ line }) => line))) {
      const held = drink === null ? undefined : this.#catalogue.drinks.get(drink);
      for (const { item, amount } of servePortions(this.#catalogue, held, lines)) {
        taken.items.push(this.#numberOf(item));
        taken.amounts.push(amount);
      }
      return taken;
    }
    for (const { line, factor } of lines) {
      const { item, amount } = this.#pouredOf(line);
      taken.items.push(item);
      taken.amounts.push(amount * factor);
    }
    return taken;
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

  #openedOn(date: BusinessDate): OpenedItems {
    let epoch = 0;
    while (epoch < this.#sharedDates.length && (this.#sharedDates[epoch] as string) <= date) epoch += 1;
    if (this.#opened?.epoch !== epoch)
      this.#opened = { epoch, items: new OpenedItems(this.#catalogue, date, this.#itemNumbers) };
    return this.#opened.items;
  }

  #numberOf(item: string): number {
    const number = this.#itemNumbers.get(item);
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

function takeOut(taken: { items: number[]; amounts: number[] }, item: number): void {
  for (let at = taken.items.length - 1; at >= 0; at -= 1) {
    if (taken.items[at] !== item) continue;
    taken.items.splice(at, 1);
    taken.amounts.splice(at, 1);
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
