import { currencyDigits } from "#engine/currency.ts";
import { saleAsks } from "#engine/sales/asks.ts";
import { datesMissing } from "#engine/sales/dates-missing.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import type { Count } from "#engine/stock/counts.ts";
import { wholeCounts } from "#engine/stock/whole-counts.ts";
import { addDays, type BusinessDate, daysBetween } from "#engine/time.ts";
import { causesByMoney } from "#engine/variance/causes/by-money.ts";
import { type ClosingOffer, offerFor } from "#server/reports/closing.ts";
import { orderFor } from "#server/reports/order.ts";
import { prepFor } from "#server/reports/prep.ts";
import { varianceFor } from "#server/reports/variance.ts";
import { momentOf, type World } from "#server/world.ts";

/** One thing the week asks for, as words and a state. */
export type WeekStep = {
  id: "count" | "sales" | "ring-names" | "variance" | "close" | "order" | "prep";
  title: string;
  detail: string;
  state: "due" | "attention" | "done";
  href: string;
};

/** A count is due when a week is nearly over. */
const COUNT_EVERY_DAYS = 7;

/** Sales that show which names are rung and on which weekdays the bar sells. */
const LATELY_DAYS = 28;

/** What is due and what is wrong, reckoned from the last moment in the book. */
export async function weekFor(world: World) {
  const { facts } = world;
  const { venue } = facts.catalogue;
  const at = momentOf(world);
  const date = businessDateOf(at, venue);
  const whole = wholeCounts(facts.counts);
  const [closing, opening] = [whole.at(-1), whole.at(-2)];
  const variance =
    closing === undefined || opening === undefined ? null : await varianceFor(world, { whole: true });
  const order = await orderFor(world, { at });
  const prep = await prepFor(world, { date });
  const lately = await world.salesBetween({ from: addDays(date, -LATELY_DAYS), to: date });
  const unmapped = unmappedIn(world, lately);
  const loud = variance === null ? [] : variance.items.filter(({ verdict }) => verdict !== "quiet");
  const nextOrders = order.suppliers.filter(({ lines }) => lines.length > 0);
  return {
    venue,
    now: { at, businessDate: date },
    latestCount: closing === undefined ? null : { name: closing.name, at: closing.at },
    previousCount: opening === undefined ? null : { name: opening.name, at: opening.at },
    steps: [
      countStep(closing, facts.counts.at(-1), (count) =>
        daysBetween({ from: businessDateOf(count.at, venue), to: date }),
      ),
      salesStep(date, world.salesDates?.to, lately),
      ringNameStep(unmapped),
      varianceStep(variance?.items.length ?? 0, loud.length, variance?.causes.length ?? 0),
      ...closeStep(world, await offerFor(world)),
      orderStep(nextOrders.length),
      prepStep(prep.batches.length, prep.discard.length),
    ],
    totals: variance?.totals ?? null,
    top: loud.slice(0, 3),
    causes: variance === null ? [] : causesByMoney(variance).slice(0, 3),
    notCounted:
      variance === null ? 0 : variance.notCounted.length + Object.keys(variance.notCountedIn).length,
    unmapped,
    expiring: prep.discard,
    nextOrders: nextOrders.map(({ supplier, orderBy, arrives, lines, total }) => ({
      supplier,
      orderBy,
      arrives,
      lines: lines.length,
      total,
    })),
  };
}

function unmappedIn(world: World, sales: readonly SaleGroup[]) {
  const minor = 10 ** currencyDigits(world.facts.catalogue.venue.currency);
  return saleAsks(world.facts.catalogue, sales)
    .unmapped.map(({ ringName, quantity, netMinor }) => ({ ringName, quantity, net: netMinor / minor }))
    .sort((a, b) => b.net - a.net);
}

/** Done for a week by a whole count; one that was only begun, or is of a few items, says how far it got. */
function countStep(
  whole: Count | undefined,
  last: Count | undefined,
  daysAgo: (count: Count) => number,
): WeekStep {
  const step = { id: "count" as const, title: "Count", href: "/count" };
  if (whole === undefined || last === undefined) {
    return { ...step, state: "due", detail: "Nothing was counted yet." };
  }
  const days = daysAgo(whole);
  const state = days >= COUNT_EVERY_DAYS ? "due" : "done";
  const ago = days === 0 ? "today" : days === 1 ? "yesterday" : `${days} days ago`;
  if (last === whole) return { ...step, state, detail: `Last counted ${ago}.` };
  const detail = `Last counted whole ${ago}; "${last.name}" holds ${last.holdings.size} of ${whole.holdings.size} items.`;
  return { ...step, state, detail };
}

function salesStep(
  date: BusinessDate,
  last: BusinessDate | undefined,
  lately: readonly SaleGroup[],
): WeekStep {
  const step = { id: "sales" as const, title: "Sales", href: "/sales" };
  if (last === undefined) return { ...step, state: "due", detail: "No sales file was read yet." };
  const sold = new Set([...lately.map(({ businessDate }) => businessDate), last]);
  const missing = datesMissing([...sold].sort(), date).length;
  if (missing === 0) return { ...step, state: "done", detail: `Sales are in up to ${last}.` };
  return {
    ...step,
    state: "due",
    detail: missing === 1 ? `1 day is missing after ${last}.` : `${missing} days are missing after ${last}.`,
  };
}

function ringNameStep(unmapped: { ringName: string }[]): WeekStep {
  const names = unmapped.length;
  return {
    id: "ring-names",
    title: "Ring names",
    href: "/sales",
    state: names === 0 ? "done" : "attention",
    detail:
      names === 0
        ? "All that was sold is known."
        : names === 1
          ? "1 name is sold that no spec knows."
          : `${names} names are sold that no spec knows.`,
  };
}

function varianceStep(items: number, loud: number, causes: number): WeekStep {
  const step = { id: "variance" as const, title: "Variance", href: "/variance" };
  if (items === 0) return { ...step, state: "due", detail: "It takes two counts to compare." };
  if (loud === 0)
    return { ...step, state: "done", detail: `All ${items} items are within what counting can do.` };
  const reasons =
    causes === 0 ? [] : [causes === 1 ? "1 likely reason to check." : `${causes} likely reasons to check.`];
  const detail = [`${loud} of ${items} items stand out.`, ...reasons].join(" ");
  return { ...step, state: "attention", detail };
}

/** Closing comes when the week is explained; before that it is no step yet. */
function closeStep({ closing }: World, offer: ClosingOffer | null): WeekStep[] {
  const step = { id: "close" as const, title: "Close the week", href: "/history" };
  if (offer === null) {
    return closing === null ? [] : [{ ...step, state: "done", detail: `Closed up to ${closing.through}.` }];
  }
  if (offer.unsettled > 0) return [];
  const detail = `The week to ${offer.through} is explained; closed, it stays as it is.`;
  return [{ ...step, state: "due", detail }];
}

function orderStep(suppliers: number): WeekStep {
  return {
    id: "order",
    title: "Order",
    href: "/order",
    state: suppliers === 0 ? "done" : "due",
    detail:
      suppliers === 0
        ? "Nothing is needed before the next cut-offs."
        : suppliers === 1
          ? "1 supplier to order from."
          : `${suppliers} suppliers to order from.`,
  };
}

function prepStep(batches: number, expired: number): WeekStep {
  const made = batches === 1 ? "1 batch to make." : `${batches} batches to make.`;
  const old = expired === 0 ? [] : [expired === 1 ? "1 past its date." : `${expired} past their date.`];
  return {
    id: "prep",
    title: "Prep",
    href: "/prep",
    state: expired > 0 ? "attention" : batches > 0 ? "due" : "done",
    detail: [batches === 0 ? "Nothing to make." : made, ...old].join(" "),
  };
}
