import { datesMissing } from "#engine/sales/dates-missing.ts";
import type { Count } from "#engine/stock/counts.ts";
import type { BusinessDate } from "#engine/time.ts";
import type { ClosingOffer } from "#server/reports/closing.ts";
import type { World } from "#server/world.ts";

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

type Compared = { items: number; loud: number; causes: number; isEarly: boolean };

/** Done for a week by a whole count; one that was only begun, or is of a few items, says how far it got. */
export function countStep(
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

/** Due while days before `date` that ought to have sales have none; `sold` in its order. */
export function salesStep(date: BusinessDate, sold: readonly BusinessDate[]): WeekStep {
  const step = { id: "sales" as const, title: "Sales", href: "/sales" };
  const last = sold.at(-1);
  if (last === undefined) return { ...step, state: "due", detail: "No sales file was read yet." };
  const missing = datesMissing(sold, date).length;
  if (missing === 0) return { ...step, state: "done", detail: `Sales are in up to ${last}.` };
  return {
    ...step,
    state: "due",
    detail: missing === 1 ? `1 day is missing after ${last}.` : `${missing} days are missing after ${last}.`,
  };
}

/** Needs a look while names are sold that the book does not know. */
export function ringNameStep(unmapped: { ringName: string }[]): WeekStep {
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

/** While sales before the last count are missing their drinks look like trouble of all kinds, so nothing is judged. */
export function varianceStep({ items, loud, causes, isEarly }: Compared): WeekStep {
  const step = { id: "variance" as const, title: "Variance", href: "/variance" };
  if (items === 0) return { ...step, state: "due", detail: "It takes two counts to compare." };
  if (isEarly)
    return {
      ...step,
      state: "attention",
      detail: "Sales before the last count are missing. Read them in first.",
    };
  if (loud === 0)
    return { ...step, state: "done", detail: `All ${items} items are within what counting can do.` };
  const reasons =
    causes === 0 ? [] : [causes === 1 ? "1 likely reason to check." : `${causes} likely reasons to check.`];
  const detail = [`${loud} of ${items} items stand out.`, ...reasons].join(" ");
  return { ...step, state: "attention", detail };
}

/** Closing comes when the week is explained; before that it is no step yet. */
export function closeStep({ closing }: World, offer: ClosingOffer | null): WeekStep[] {
  const step = { id: "close" as const, title: "Close the week", href: "/history" };
  if (offer === null) {
    return closing === null ? [] : [{ ...step, state: "done", detail: `Closed up to ${closing.through}.` }];
  }
  if (offer.unsettled > 0) return [];
  const detail = `The week to ${offer.through} is explained; closed, it stays as it is.`;
  return [{ ...step, state: "due", detail }];
}

/** Due while something is to be ordered from so many suppliers. */
export function orderStep(suppliers: number): WeekStep {
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

/** Due while batches are to be made; what is past its date needs a look. */
export function prepStep(batches: number, expired: number): WeekStep {
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
