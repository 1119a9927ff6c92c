import type { Catalogue } from "#engine/catalogue.ts";
import { type Busyness, levelOn } from "#engine/demand/busyness.ts";
import type { KnownDays } from "#engine/demand/known-days.ts";
import { menuDays } from "#engine/demand/menu-days.ts";
import type { Sold } from "#engine/demand/mix.ts";
import type { IsOut } from "#engine/demand/out-days.ts";
import type { SoldSeries } from "#engine/demand/series.ts";
import type { BusinessDate } from "#engine/time.ts";

/** A planned share counts as much as so many days of sales. */
export const PLAN_WORTH_DAYS = 7;

/** A drink with fewer days behind it when its plan begins is a new one: its plan is its start. */
const NEW_DRINK_DAYS = 5;

/** A drink's days, and whether its plans are how it starts (a new drink) or come on top (a party). */
export type Candidate = Sold & { isNew: boolean; stopped: boolean };

/** All that was sold or could be, with a party's plan taken out of what was sold on its day, and no day without stock. */
export function candidates(
  catalogue: Catalogue,
  { dates, serves }: SoldSeries,
  { known, isOut }: { known: KnownDays; isOut: IsOut },
): Candidate[] {
  const whats = new Set([...serves.keys(), ...catalogue.drinks.keys()]);
  const totals = Float64Array.from(dates, (_, day) =>
    [...serves.values()].reduce((sum, row) => sum + (row[day] ?? 0), 0),
  );
  return [...whats].map((what) => {
    const sold = serves.get(what) ?? new Float64Array(dates.length);
    const row = withoutOutDays(sold, { totals, isOut: dates.map((date) => isOut(what, date)) });
    const { start, end, stopped } = menuDays(catalogue, what, dates, row);
    const firstPlan = known.planDates.get(what)?.[0];
    const before = firstPlan === undefined ? end : dates.findIndex((date) => date >= firstPlan);
    const isNew = firstPlan !== undefined && (before < 0 ? end : before) - start < NEW_DRINK_DAYS;
    const plain = isNew || firstPlan === undefined ? row : withoutPlans(dates, row, what, known);
    return { what, serves: plain, start, end, stopped, prior: null, isNew };
  });
}

/** On days it could not be made a drink is taken to have had its usual share of what was sold: wanted, not sold. */
function withoutOutDays(
  sold: Float64Array,
  { totals, isOut }: { totals: Float64Array; isOut: readonly boolean[] },
): Float64Array {
  if (!isOut.includes(true)) return sold;
  const sumOf = (values: Float64Array) =>
    values.reduce((sum, value, day) => sum + (isOut[day] ? 0 : value), 0);
  const first = sold.findIndex((serves) => serves > 0);
  const all = sumOf(totals.map((total, day) => (day >= first ? total : 0)));
  const share = first < 0 || all <= 0 ? 0 : sumOf(sold) / all;
  return sold.map((serves, day) => (isOut[day] && day > first ? share * (totals[day] ?? 0) : serves));
}

function withoutPlans(dates: readonly BusinessDate[], row: Float64Array, what: string, known: KnownDays) {
  return Float64Array.from(row, (sold, day) => Math.max(0, sold - known.plannedOn(dates[day] ?? "", what)));
}

/** A new drink starts from its planned share of what its planned days are expected to sell. */
export function startedByPlan(drink: Candidate, known: KnownDays, busyness: Busyness): Candidate {
  const planDates = known.planDates.get(drink.what);
  if (!drink.isNew || planDates === undefined) return drink;
  let [planned, expected] = [0, 0];
  for (const date of planDates) {
    planned += known.plannedOn(date, drink.what);
    expected += levelOn(busyness, date) * known.factorOn(date);
  }
  if (expected <= 0) return drink;
  return { ...drink, prior: { share: Math.min(0.5, planned / expected), days: PLAN_WORTH_DAYS } };
}
