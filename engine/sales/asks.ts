import type { Book } from "#engine/book.ts";
import { baseAmount, type Catalogue, itemNamed } from "#engine/catalogue.ts";
import { foldName } from "#engine/name.ts";
import { type ReadModifiers, readModifiers } from "#engine/sales/modifiers.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import type { Modifier } from "#engine/sales/ring.ts";
import { type SoldAs, soldAs } from "#engine/sales/sold-as.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import type { When } from "#engine/sales/when.ts";
import { type Bill, billOf, billOfBatch, type Portion } from "#engine/specs/bill.ts";
import { billAsMade } from "#engine/specs/bill-as-made.ts";
import { modifyLines, type ServeLine, serveLines, servePortions } from "#engine/specs/serve.ts";
import { inputsByBatch } from "#engine/stock/batch-inputs.ts";
import type { Batch, Loss, UsedInput } from "#engine/stock/movement.ts";
import type { BusinessDate } from "#engine/time.ts";

/** So many makings of one bill: what was sold, batched or lost, before it is summed by item. */
export type Ask = When & {
  kind: "sale" | "batch" | "loss";
  /** The drink, item or prep that asked. */
  what: string;
  /** How many times the bill was made; negative for what was taken back. */
  times: number;
  bill: Bill;
};

export type UnmappedSale = {
  ringName: string;
  quantity: number;
  netMinor: number;
  reason: "unknown" | "no-version";
};

export type SaleAsks = {
  asks: Ask[];
  unmapped: UnmappedSale[];
  unknownModifiers: { modifier: string; quantity: number }[];
  /** Quantity sold of ring names that are known, and of all but ignored ones. */
  mappedQuantity: number;
  quantity: number;
};

export type AskOptions = { raw?: boolean };

/** A sale read once for all sales of its ring name and modifiers between two changes of spec. */
export type ReadSale =
  | { kind: "ask"; what: string; serves: number; bill: Bill; unknownModifiers: string[] }
  | { kind: "unmapped"; reason: UnmappedSale["reason"] }
  | { kind: "ignore" };

/** Turns sales into asks: ring names and modifiers read, each drink's bill made once per version. */
export function saleAsks(
  catalogue: Catalogue,
  sales: readonly SaleGroup[],
  options: AskOptions = {},
): SaleAsks {
  const reader = new SaleReader(catalogue, options);
  const asks: Ask[] = [];
  const unmapped = new Map<string, UnmappedSale>();
  const unknownModifiers = new Map<string, { modifier: string; quantity: number }>();
  let mappedQuantity = 0;
  let quantity = 0;
  for (const sale of sales) {
    const read = reader.read(sale);
    if (read.kind === "ignore") continue;
    quantity += sale.quantity;
    if (read.kind === "unmapped") {
      addUnmapped(unmapped, sale, read.reason);
      continue;
    }
    mappedQuantity += sale.quantity;
    const { businessDate, at, timed } = sale;
    const { what, bill, serves } = read;
    asks.push({ kind: "sale", businessDate, at, timed, what, bill, times: sale.quantity * serves });
    for (const modifier of read.unknownModifiers) {
      const key = foldName(modifier);
      const held = unknownModifiers.get(key) ?? { modifier, quantity: 0 };
      unknownModifiers.set(key, { ...held, quantity: held.quantity + sale.quantity });
    }
  }
  return {
    asks,
    unmapped: [...unmapped.values()],
    unknownModifiers: [...unknownModifiers.values()],
    mappedQuantity,
    quantity,
  };
}

function addUnmapped(
  unmapped: Map<string, UnmappedSale>,
  sale: SaleGroup,
  reason: UnmappedSale["reason"],
): void {
  const key = foldName(sale.ringName);
  const held = unmapped.get(key) ?? { ringName: sale.ringName, quantity: 0, netMinor: 0, reason };
  unmapped.set(key, {
    ...held,
    quantity: held.quantity + sale.quantity,
    netMinor: held.netMinor + sale.netMinor,
  });
}

/** The time cut at some days; stretches are numbered from 0, the one before the first day. */
type Stretches = { dates: readonly BusinessDate[]; lastDate: BusinessDate; last: number };

/** One ring name: what it meant between the days from which it may mean something else, by modifiers. */
type Ring = {
  /** Cut where its bill may change, what preps are made of included. */
  bills: Stretches;
  byModifiers: Map<string, ReadSale[]>;
  /** Cut where its own lines may change only, and what it is sold as in each stretch. */
  own: Stretches;
  sold: Sold[];
};

/** The lines of one serve as the spec has them, and how many serves a sale is. */
export type SoldLines = { drink: string | null; serves: number; lines: readonly ServeLine[] };

type Sold = { meaning: SoldAs; lines: readonly ServeLine[] | undefined };

/** Reads ring names and modifiers; each once between two changes of the drink it stands for or of what drinks share. */
export class SaleReader {
  readonly #catalogue: Catalogue;
  readonly #options: AskOptions;
  readonly #rings = new Map<string, Ring>();
  readonly #modifiers = new Map<string, ReadModifiers>();
  readonly #sharedDates: ReadonlySet<BusinessDate>;

  constructor(catalogue: Catalogue, options: AskOptions) {
    this.#catalogue = catalogue;
    this.#options = options;
    this.#sharedDates = sharedChangeDates(catalogue);
  }

  read(sale: Pick<SaleGroup, "ringName" | "modifiers" | "businessDate">): ReadSale {
    const ring = this.#ringOf(sale.ringName);
    const epoch = stretchIn(ring.bills, sale.businessDate);
    let byEpoch = ring.byModifiers.get(sale.modifiers);
    if (byEpoch === undefined) {
      byEpoch = [];
      ring.byModifiers.set(sale.modifiers, byEpoch);
    }
    const known = byEpoch[epoch];
    if (known !== undefined) return known;
    const read = this.#readNew(this.#soldAs(sale), sale);
    byEpoch[epoch] = read;
    return read;
  }

  /** The lines of one sale of a ring name, before its modifiers; undefined where it uses nothing. */
  linesOf(ringName: string, businessDate: BusinessDate): SoldLines | undefined {
    const { meaning, lines } = this.#soldAs({ ringName, businessDate });
    if (lines === undefined || meaning.kind === "ignore" || meaning.kind === "unknown") return undefined;
    return meaning.kind === "drink"
      ? { drink: meaning.drink, serves: meaning.serves, lines }
      : { drink: null, serves: 1, lines };
  }

  /** What a cell of modifiers does. */
  effectsOf(modifiers: string): readonly Modifier[] {
    return this.#modifiersIn(modifiers).effects;
  }

  /** What a ring name is on a date, whatever its modifiers. */
  stateOf(ringName: string, businessDate: BusinessDate): "mapped" | "ignore" | UnmappedSale["reason"] {
    const { meaning, lines } = this.#soldAs({ ringName, businessDate });
    if (meaning.kind === "ignore") return "ignore";
    if (meaning.kind === "unknown") return "unknown";
    return lines === undefined ? "no-version" : "mapped";
  }

  #soldAs(sale: Pick<SaleGroup, "ringName" | "businessDate">): Sold {
    const ring = this.#ringOf(sale.ringName);
    const own = stretchIn(ring.own, sale.businessDate);
    const sold = ring.sold[own] ?? this.#soldAsNew(sale);
    ring.sold[own] = sold;
    return sold;
  }

  #soldAsNew({ ringName, businessDate }: Pick<SaleGroup, "ringName" | "businessDate">): Sold {
    const meaning = soldAs(this.#catalogue, ringName, businessDate);
    if (meaning.kind === "drink")
      return { meaning, lines: serveLines(this.#catalogue, meaning.drink, businessDate) };
    if (meaning.kind !== "item") return { meaning, lines: undefined };
    const { item, amount } = meaning;
    return { meaning, lines: [{ item, amount, unit: itemNamed(this.#catalogue, item).base }] };
  }

  #modifiersIn(cell: string): ReadModifiers {
    const known = this.#modifiers.get(cell);
    if (known !== undefined) return known;
    const read = readModifiers(this.#catalogue, cell);
    this.#modifiers.set(cell, read);
    return read;
  }

  /**
   * The stretch between two changes of a ring name's own lines that a date lies in: its number, and the day it ends before
   * (null for the last).
   */
  ownStretch(ringName: string, date: BusinessDate): { number: number; until: BusinessDate | null } {
    const { own } = this.#ringOf(ringName);
    const number = stretchIn(own, date);
    return { number, until: own.dates[number] ?? null };
  }

  #ringOf(ringName: string): Ring {
    const known = this.#rings.get(ringName);
    if (known !== undefined) return known;
    const own = this.#ownDatesOf(ringName);
    const ring: Ring = {
      bills: cutAt([...own, ...this.#sharedDates]),
      byModifiers: new Map(),
      own: cutAt(own),
      sold: [],
    };
    this.#rings.set(ringName, ring);
    return ring;
  }

  /** The days from which the spec of its drink is another, or the packs of its item are. */
  #ownDatesOf(ringName: string): BusinessDate[] {
    const { ringNames, drinkNames, itemNames, specs, packs } = this.#catalogue;
    const folded = foldName(ringName);
    const meaning = ringNames.get(folded)?.soldAs;
    if (meaning?.kind === "ignore") return [];
    const drink = meaning?.kind === "drink" ? meaning.drink : drinkNames.get(folded);
    const ofDrink = drink === undefined ? [] : (specs.get(drink) ?? []);
    const item = meaning?.kind === "item" ? meaning.item : itemNames.get(folded);
    const ofItem = item === undefined ? [] : (packs.get(item) ?? []);
    return [...ofDrink, ...ofItem].flatMap(({ from }) => from ?? []);
  }

  #readNew(
    { meaning, lines }: Sold,
    { modifiers, businessDate }: Pick<SaleGroup, "modifiers" | "businessDate">,
  ): ReadSale {
    const catalogue = this.#catalogue;
    if (meaning.kind === "ignore") return meaning;
    if (meaning.kind === "unknown") return { kind: "unmapped", reason: "unknown" };
    if (lines === undefined) return { kind: "unmapped", reason: "no-version" };
    const what = meaning.kind === "drink" ? meaning.drink : meaning.item;
    const { effects, unknown } = this.#modifiersIn(modifiers);
    const drink = meaning.kind === "drink" ? catalogue.drinks.get(what) : undefined;
    const portions = servePortions(catalogue, drink, modifyLines(lines, effects));
    const bill = billOf(catalogue, portions, { ...this.#options, date: businessDate });
    const serves = meaning.kind === "drink" ? meaning.serves : 1;
    return { kind: "ask", what, serves, bill, unknownModifiers: unknown };
  }
}

/** Every day from which something is another that many drinks may share: a prep and its spec, a cut, a pack. */
export function sharedChangeDates({ drinks, specs, preps, cuts, packs }: Catalogue): Set<BusinessDate> {
  const ofPreps = [...specs].flatMap(([makes, versions]) => (drinks.has(makes) ? [] : versions));
  const shared = [ofPreps, ...preps.values(), ...cuts.values(), ...packs.values()].flat();
  return new Set(shared.flatMap(({ from }) => from ?? []));
}

function cutAt(dates: readonly BusinessDate[]): Stretches {
  return { dates: [...new Set(dates)].sort(), lastDate: "", last: 0 };
}

function stretchIn(stretches: Stretches, date: BusinessDate): number {
  if (date === stretches.lastDate) return stretches.last;
  const { dates } = stretches;
  let low = 0;
  let high = dates.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((dates[middle] ?? "") <= date) low = middle + 1;
    else high = middle;
  }
  stretches.lastDate = date;
  stretches.last = low;
  return low;
}

/** What the house has made, and what of it did not take what its spec says. */
export type BatchesMade = Pick<Book, "batches" | "batchInputs">;

/**
 * What the batches made used of their inputs: by their specs, save for the items a batch is recorded to have used
 * otherwise.
 *
 * A prep made to order is asked for by the drinks, straight through to its inputs; a batch of it that
 * was logged all the same would take them twice and is left out.
 */
export function batchAsks(catalogue: Catalogue, made: BatchesMade): Ask[] {
  const usedBy = inputsByBatch(made);
  return made.batches.flatMap((batch) => {
    if (!itemNamed(catalogue, batch.prep).stocked) return [];
    const bill = billOfMade(catalogue, batch, usedBy.get(batch));
    if (bill === undefined) return [];
    const { at, prep: what } = batch;
    const businessDate = businessDateOf(at, catalogue.venue);
    return [{ kind: "batch" as const, businessDate, at, timed: true, what, times: 1, bill }];
  });
}

/** A batch without a spec in force still used what is recorded. */
function billOfMade(
  catalogue: Catalogue,
  { prep, made, unit, at }: Batch,
  used: readonly UsedInput[] | undefined,
): Bill | undefined {
  const amount = baseAmount(catalogue, { item: prep, amount: made, unit });
  const bill = billOfBatch(catalogue, { prep, amount, date: businessDateOf(at, catalogue.venue) });
  if (used === undefined) return bill;
  const amounts = new Map(used.map((input) => [input.item, baseAmount(catalogue, input)]));
  return billAsMade(bill ?? { items: [], cuts: [] }, amounts);
}

/** What was lost: a drink is exploded like a sale, an item made to order is opened up to its inputs. */
export function lossAsks(catalogue: Catalogue, losses: readonly Loss[], options: AskOptions = {}): Ask[] {
  return losses.flatMap((loss) => {
    const businessDate = businessDateOf(loss.at, catalogue.venue);
    const lost = lostPortions(catalogue, loss, businessDate);
    if (lost === undefined) return [];
    const bill = billOf(catalogue, lost.portions, { ...options, date: businessDate });
    return [
      {
        kind: "loss" as const,
        businessDate,
        at: loss.at,
        timed: true,
        what: loss.what,
        times: lost.times,
        bill,
      },
    ];
  });
}

function lostPortions(
  catalogue: Catalogue,
  { what, amount, unit }: Loss,
  date: BusinessDate,
): { portions: Portion[]; times: number } | undefined {
  if (unit !== "serve") {
    const lost = baseAmount(catalogue, { item: what, amount, unit });
    return { portions: [{ item: what, amount: lost, variance: 0, biasSd: 0 }], times: 1 };
  }
  const lines = serveLines(catalogue, what, date);
  if (lines === undefined) return undefined;
  return {
    portions: servePortions(catalogue, catalogue.drinks.get(what), modifyLines(lines, [])),
    times: amount,
  };
}
