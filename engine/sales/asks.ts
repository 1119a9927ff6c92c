import { baseAmount, type Catalogue, itemNamed } from "#engine/catalogue.ts";
import { foldName } from "#engine/name.ts";
import { readModifiers } from "#engine/sales/modifiers.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { soldAs } from "#engine/sales/sold-as.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import type { When } from "#engine/sales/when.ts";
import { type Bill, billOf, billOfBatch, type Portion } from "#engine/specs/bill.ts";
import { modifyLines, serveLines, servePortions } from "#engine/specs/serve.ts";
import type { Batch, Loss } from "#engine/stock/movement.ts";
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
type ReadSale =
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

class SaleReader {
  readonly #catalogue: Catalogue;
  readonly #options: AskOptions;
  readonly #read = new Map<string, ReadSale>();

  constructor(catalogue: Catalogue, options: AskOptions) {
    this.#catalogue = catalogue;
    this.#options = options;
  }

  read(sale: SaleGroup): ReadSale {
    const key = `${epochOf(this.#catalogue, sale.businessDate)}\u0000${sale.ringName}\u0000${sale.modifiers}`;
    const known = this.#read.get(key);
    if (known !== undefined) return known;
    const read = this.#readNew(sale);
    this.#read.set(key, read);
    return read;
  }

  #readNew({ ringName, modifiers, businessDate }: SaleGroup): ReadSale {
    const catalogue = this.#catalogue;
    const sold = soldAs(catalogue, ringName, businessDate);
    if (sold.kind === "ignore") return sold;
    if (sold.kind === "unknown") return { kind: "unmapped", reason: "unknown" };
    const what = sold.kind === "drink" ? sold.drink : sold.item;
    const { effects, unknown } = readModifiers(catalogue, modifiers);
    const drink = sold.kind === "drink" ? catalogue.drinks.get(what) : undefined;
    const lines =
      sold.kind === "drink"
        ? serveLines(catalogue, what, businessDate)
        : [{ item: what, amount: sold.amount, unit: itemNamed(catalogue, what).base }];
    if (lines === undefined) return { kind: "unmapped", reason: "no-version" };
    const portions = servePortions(catalogue, drink, modifyLines(lines, effects));
    const bill = billOf(catalogue, portions, { ...this.#options, date: businessDate });
    const serves = sold.kind === "drink" ? sold.serves : 1;
    return { kind: "ask", what, serves, bill, unknownModifiers: unknown };
  }
}

/** Which stretch between two changes of spec, prep, cut or pack a date lies in. */
function epochOf(catalogue: Catalogue, date: BusinessDate): number {
  const { changeDates } = catalogue;
  let low = 0;
  let high = changeDates.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((changeDates[middle] ?? "") <= date) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * What the batches made used of their inputs.
 *
 * A prep made to order is asked for by the drinks, straight through to its inputs; a batch of it that
 * was logged all the same would take them twice and is left out.
 */
export function batchAsks(catalogue: Catalogue, batches: readonly Batch[]): Ask[] {
  return batches.flatMap((batch) => {
    if (!itemNamed(catalogue, batch.prep).stocked) return [];
    const businessDate = businessDateOf(batch.at, catalogue.venue);
    const amount = baseAmount(catalogue, { item: batch.prep, amount: batch.made, unit: batch.unit });
    const bill = billOfBatch(catalogue, { prep: batch.prep, amount, date: businessDate });
    if (bill === undefined) return [];
    return [
      { kind: "batch" as const, businessDate, at: batch.at, timed: true, what: batch.prep, times: 1, bill },
    ];
  });
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
