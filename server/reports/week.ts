import { currencyDigits } from "#engine/currency.ts";
import { saleAsks } from "#engine/sales/asks.ts";
import { datesMissing } from "#engine/sales/dates-missing.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { wholeCounts } from "#engine/stock/whole-counts.ts";
import { addDays, type BusinessDate, daysBetween } from "#engine/time.ts";
import { causesByMoney } from "#engine/variance/causes/by-money.ts";
import { offerFor } from "#server/reports/closing.ts";
import { orderFor } from "#server/reports/order.ts";
import { prepFor } from "#server/reports/prep.ts";
import { varianceFor } from "#server/reports/variance.ts";
import {
  closeStep,
  countStep,
  orderStep,
  prepStep,
  ringNameStep,
  salesStep,
  varianceStep,
} from "#server/reports/week-steps.ts";
import { momentOf, type World } from "#server/world.ts";

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
  const sold = datesSold(lately, world.salesDates?.to);
  const isEarly =
    variance !== null && closing !== undefined && lacksSales(sold, businessDateOf(closing.at, venue));
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
      salesStep(date, sold),
      ringNameStep(unmapped),
      varianceStep({
        items: variance?.items.length ?? 0,
        loud: loud.length,
        causes: variance?.causes.length ?? 0,
        isEarly,
      }),
      ...closeStep(world, await offerFor(world)),
      orderStep(nextOrders.length),
      prepStep(prep.batches.length, prep.discard.length),
    ],
    totals: variance?.totals ?? null,
    /** Sales before the last whole count are still missing, so that what was poured for them looks unexplained. */
    isEarly,
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

/** The dates lately sold on and the last of all, in their order. */
function datesSold(lately: readonly SaleGroup[], last: BusinessDate | undefined): BusinessDate[] {
  const dates = new Set(lately.map(({ businessDate }) => businessDate));
  if (last !== undefined) dates.add(last);
  return [...dates].sort();
}

function lacksSales(sold: readonly BusinessDate[], until: BusinessDate): boolean {
  return sold.length === 0 || datesMissing(sold, until).length > 0;
}
