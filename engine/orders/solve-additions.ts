import { MOST_DAYS_BOUGHT } from "#engine/orders/purchase.ts";
import type { Solver } from "#engine/orders/solve-budget.ts";
import type { Candidate } from "#engine/orders/to-minimum.ts";

/** More units of one line than this are not looked at. */
const MOST_UNITS = 12;
const SECONDS = 2;

/** A day that money stands on the shelf counts as much as this share of it: least money first, then soonest used. */
const DAY_SHARE = 1 / 1000;

type Unit = { name: string; candidate: number; price: number; cases: number; days: number };

/**
 * The additions that reach a supplier's minimum for the least money, and of those the ones used up soonest: an
 * integer programme, one yes or no a unit. Nothing that would stand for two months or past its shelf life.
 *
 * Units of each candidate; undefined when nothing sensible reaches it or the solver finds no answer in its time.
 */
export function solveAdditions(
  { missingValue, missingCases }: { missingValue: number; missingCases: number },
  candidates: readonly Candidate[],
  solver: Solver,
): number[] | undefined {
  const units = candidates.flatMap(unitsOf);
  if (units.length === 0) return undefined;
  const sum = (factor: (unit: Unit) => number) =>
    units.map((unit) => `+ ${factor(unit).toFixed(9)} ${unit.name}`).join(" ");
  const problem = [
    "Minimize",
    ` money: ${sum(({ price, days }) => price * (1 + days * DAY_SHARE))}`,
    "Subject To",
    ...(missingValue > 0 ? [` value: ${sum(({ price }) => price)} >= ${missingValue.toFixed(9)}`] : []),
    ...(missingCases > 0 ? [` cases: ${sum(({ cases }) => cases)} >= ${missingCases.toFixed(9)}`] : []),
    "Binary",
    ` ${units.map(({ name }) => name).join(" ")}`,
    "End",
  ].join("\n");
  const { Status, Columns } = solver.solve(problem, { mip_rel_gap: 1e-4, time_limit: SECONDS });
  if (Status !== "Optimal") return undefined;
  const added = candidates.map(() => 0);
  for (const { name, candidate } of units) {
    if ((Columns[name]?.Primal ?? 0) > 0.5) added[candidate] = (added[candidate] ?? 0) + 1;
  }
  return added;
}

function unitsOf({ position, unit, bought, perDay, keepsDays }: Candidate, candidate: number): Unit[] {
  const { price, cases, size } = unit;
  if (price === null || perDay <= 0) return [];
  const stock = position.onHand + position.onOrder + bought * size;
  const most = Math.floor((perDay * Math.min(MOST_DAYS_BOUGHT, keepsDays) - stock) / size);
  return Array.from({ length: Math.min(MOST_UNITS, Math.max(0, most)) }, (_, index) => ({
    name: `x${candidate}_${index}`,
    candidate,
    price,
    cases,
    days: (stock + (index + 1) * size) / perDay,
  }));
}
