import { itemNamed } from "#engine/catalogue.ts";
import { containerPrice } from "#engine/costing/pack-price.ts";
import { currencyDigits } from "#engine/currency.ts";
import type { Facts } from "#engine/facts.ts";
import { type FilledLine, filledLines } from "#engine/orders/filled-lines.ts";
import { OPEN_DAYS_AFTER_EXPECTED } from "#engine/orders/open-orders.ts";
import { businessDateOf, instantToLocal } from "#engine/sales/read/clock.ts";
import type { Pack } from "#engine/stock/item.ts";
import type { Delivery } from "#engine/stock/movement.ts";
import { containersIn, packNamed } from "#engine/stock/pack.ts";
import { addDays, type BusinessDate, daysBetween, type Instant } from "#engine/time.ts";

/** One line of an order beside what came of it. Amounts in containers, money in major units. */
export type LineCheck = {
  item: string;
  pack: string;
  ordered: number;
  received: number;
  /** `waiting` until its day is over; then `short` of some or `missing` altogether. */
  state: "whole" | "waiting" | "short" | "missing";
  expected: BusinessDate;
  /** Calendar days after its day that the last of it came, or that it is late by now; 0 in time. */
  daysLate: number;
  /** A container as the pack was priced when it was ordered, and as it was paid; null where nobody wrote it. */
  priceOrdered: number | null;
  pricePaid: number | null;
  /** Paid more (or less) than ordered at, over all that came; 0 where not known. */
  paidMore: number;
  /** Deposit on what came as the pack has it, and as the invoices charged it (null where nobody wrote it); major units. */
  depositDue: number;
  depositCharged: number | null;
};

/** Deposits of all that came on an order's invoices, in major units. */
export type Deposits = {
  due: number;
  charged: number | null;
  /** Empty containers handed back, and their deposit, which is to be credited. */
  empties: number;
  back: number;
};

/** What came on the order's invoices without being on the order, or beyond it. */
export type Unordered = {
  item: string;
  pack: string;
  quantity: number;
  invoice: string;
  /** The line short that it may stand for: the same item in another pack, else one of its category. */
  insteadOf: string | null;
};

export type OrderCheck = {
  order: string;
  supplier: string;
  placed: Instant;
  invoices: string[];
  lines: LineCheck[];
  unordered: Unordered[];
  deposits: Deposits;
};

/** A price differs when it is off by more than half a cent a container: rounding of a total is less. */
const PRICE_ROUNDING = 0.005;

/**
 * An order beside what had come of it by a moment, line by line: short, late, priced otherwise, or something else
 * in its place. One entry a supplier; none where no such order was placed by then.
 */
export function checkOrder(facts: Facts, order: string, at: Instant): OrderCheck[] {
  const filled = filledLines(facts, at);
  const own = filled.filter(({ line }) => line.order === order);
  return [...new Set(own.map(({ line }) => line.supplier))].map((supplier) => {
    const lines = own.filter(({ line }) => line.supplier === supplier);
    const invoices = [
      ...new Set(lines.flatMap(({ filledBy }) => filledBy.map(({ delivery }) => delivery.invoice))),
    ];
    const checks = lines.map((line) => checkLine(facts, line, at));
    const placed = lines.map(({ line }) => line.placed).sort()[0] ?? at;
    return {
      order,
      supplier,
      placed,
      invoices,
      lines: checks,
      unordered: unordered(facts, invoiced(facts, { supplier, placed, invoices, at }), filled, checks),
      deposits: invoiceDeposits(facts, invoiced(facts, { supplier, placed, invoices, at })),
    };
  });
}

/** Order lines whose day is over and of which something is still to come, the latest first. */
export type LateLine = { order: string; supplier: string } & LineCheck;

export function lateLines(facts: Facts, at: Instant): LateLine[] {
  const today = instantToLocal(at, facts.catalogue.venue).slice(0, 10);
  return filledLines(facts, at)
    .filter(({ line }) => today <= addDays(line.expected, OPEN_DAYS_AFTER_EXPECTED))
    .map((filled) => ({
      order: filled.line.order,
      supplier: filled.line.supplier,
      ...checkLine(facts, filled, at),
    }))
    .filter(({ state }) => state === "short" || state === "missing")
    .sort((a, b) => b.daysLate - a.daysLate);
}

function checkLine(
  facts: Facts,
  { line, pack, ordered, left, filledBy }: FilledLine,
  at: Instant,
): LineCheck {
  const { venue } = facts.catalogue;
  const received = ordered - left;
  const isWhole = left <= 1e-9;
  const last = filledBy.at(-1)?.delivery.at;
  const until = isWhole && last !== undefined ? last : at;
  const daysLate = Math.max(
    0,
    daysBetween({ from: line.expected, to: instantToLocal(until, venue).slice(0, 10) }),
  );
  const priceOrdered = containerPrice(pack);
  const paid = filledBy.flatMap(({ delivery, containers }) => {
    const price = paidPerContainer(facts, delivery);
    return price === null ? [] : [{ containers, price }];
  });
  const priced = paid.reduce((sum, { containers }) => sum + containers, 0);
  const money = paid.reduce((sum, { containers, price }) => sum + containers * price, 0);
  const pricePaid = priced > 0 ? money / priced : null;
  const isChanged =
    pricePaid !== null && priceOrdered !== null && Math.abs(pricePaid - priceOrdered) > PRICE_ROUNDING;
  return {
    item: line.item,
    pack: line.pack,
    ordered,
    received,
    state: isWhole ? "whole" : daysLate === 0 ? "waiting" : received > 0 ? "short" : "missing",
    expected: line.expected,
    daysLate,
    priceOrdered,
    pricePaid,
    paidMore: isChanged ? (pricePaid - priceOrdered) * priced : 0,
    ...depositsOf(facts, { pack, received, filledBy }),
  };
}

/** A delivery that fills several lines is shared out among them by what each took of it. */
function depositsOf(
  facts: Facts,
  { pack, received, filledBy }: { pack: Pack; received: number; filledBy: FilledLine["filledBy"] },
): Pick<LineCheck, "depositDue" | "depositCharged"> {
  const charged = filledBy.flatMap(({ delivery, containers }) =>
    delivery.depositMinor === null
      ? []
      : [(delivery.depositMinor * containers) / containersOf(facts.catalogue, delivery)],
  );
  return {
    depositDue: major(facts, received * (pack.depositMinor ?? 0)),
    depositCharged: charged.length === 0 ? null : major(facts, sumOf(charged)),
  };
}

function invoiceDeposits(facts: Facts, deliveries: readonly Delivery[]): Deposits {
  const { catalogue } = facts;
  const depositOf = (delivery: Delivery) => {
    const date = businessDateOf(delivery.at, catalogue.venue);
    return packNamed(catalogue, { ...delivery, date })?.depositMinor ?? 0;
  };
  const charged = deliveries.flatMap(({ depositMinor }) => (depositMinor === null ? [] : [depositMinor]));
  const returned = deliveries.filter(({ empties }) => empties !== null);
  return {
    due: major(facts, sumOf(deliveries.map((one) => containersOf(catalogue, one) * depositOf(one)))),
    charged: charged.length === 0 ? null : major(facts, sumOf(charged)),
    empties: sumOf(returned.map(({ empties }) => empties ?? 0)),
    back: major(facts, sumOf(returned.map((one) => (one.empties ?? 0) * depositOf(one)))),
  };
}

function major({ catalogue }: Facts, minor: number): number {
  return minor / 10 ** currencyDigits(catalogue.venue.currency);
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

function paidPerContainer({ catalogue }: Facts, delivery: Delivery): number | null {
  const containers = containersOf(catalogue, delivery);
  if (delivery.priceTotalMinor === null || containers <= 0) return null;
  return delivery.priceTotalMinor / 10 ** currencyDigits(catalogue.venue.currency) / containers;
}

function containersOf(catalogue: Facts["catalogue"], delivery: Delivery): number {
  const date = businessDateOf(delivery.at, catalogue.venue);
  const pack = packNamed(catalogue, { ...delivery, date });
  return pack === undefined ? 0 : containersIn(pack, delivery.quantity, delivery.of);
}

type Invoiced = { supplier: string; placed: Instant; invoices: readonly string[]; at: Instant };

/** All that came on an order's invoices, ordered or not. */
function invoiced({ book }: Facts, { supplier, placed, invoices, at }: Invoiced): Delivery[] {
  return book.deliveries.filter(
    (delivery) =>
      delivery.supplier === supplier &&
      delivery.at >= placed &&
      delivery.at <= at &&
      invoices.includes(delivery.invoice),
  );
}

function unordered(
  { catalogue }: Facts,
  deliveries: readonly Delivery[],
  filled: readonly FilledLine[],
  checks: readonly LineCheck[],
): Unordered[] {
  const taken = new Map<Delivery, number>();
  for (const { delivery, containers } of filled.flatMap(({ filledBy }) => filledBy))
    taken.set(delivery, (taken.get(delivery) ?? 0) + containers);
  const short = checks.filter(({ state }) => state !== "whole");
  return deliveries.flatMap((delivery) => {
    const quantity = containersOf(catalogue, delivery) - (taken.get(delivery) ?? 0);
    if (quantity <= 1e-9) return [];
    const { category } = itemNamed(catalogue, delivery.item);
    const stands =
      short.find(({ item }) => item === delivery.item) ??
      short.find(({ item }) => itemNamed(catalogue, item).category === category);
    return [
      {
        item: delivery.item,
        pack: delivery.pack,
        quantity,
        invoice: delivery.invoice,
        insteadOf: stands?.item ?? null,
      },
    ];
  });
}
