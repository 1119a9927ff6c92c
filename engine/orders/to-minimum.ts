import type { Wanted } from "#engine/orders/budget.ts";
import { MOST_DAYS_BOUGHT } from "#engine/orders/purchase.ts";
import { solveAdditions } from "#engine/orders/solve-additions.ts";
import type { Solver } from "#engine/orders/solve-budget.ts";

/** More of a pack than par asks for, to reach a supplier's minimum. */
export type Addition = {
  item: string;
  pack: string;
  quantity: number;
  of: "container" | "case";
  cost: number;
};

/** A line of the supplier, as far as it is bought already. */
export type Candidate = Wanted & { bought: number; perDay: number; keepsDays: number };

/**
 * What to add to an order that falls short of its supplier's minimum, and nothing that would stand for two months
 * or past its shelf life: with a solver the least money, without one unit by unit of what is used up soonest.
 *
 * Empty when the minimum is met, when nothing is ordered, or when nothing sensible reaches it: then waiting for
 * the next order, or asking the supplier, is the better way.
 */
export function additionsTo(minimum: Missing, candidates: readonly Candidate[], solver?: Solver): Addition[] {
  if (minimum.missingValue <= 1e-9 && minimum.missingCases <= 1e-9) return [];
  const solved = solver && solveAdditions(minimum, candidates, solver);
  const added = solved ?? oneByOne(minimum, candidates) ?? [];
  return candidates.flatMap(({ unit }, index) => {
    const quantity = added[index] ?? 0;
    if (quantity === 0) return [];
    const { item, pack } = unit.pack;
    return [{ item, pack, quantity, of: unit.of, cost: quantity * (unit.price ?? 0) }];
  });
}

type Missing = { missingValue: number; missingCases: number };

function oneByOne({ missingValue, missingCases }: Missing, candidates: readonly Candidate[]) {
  let [money, cases] = [missingValue, missingCases];
  const added = candidates.map(() => 0);
  while (money > 1e-9 || cases > 1e-9) {
    const index = soonestUsed(candidates, added);
    const next = candidates[index];
    if (next === undefined) return undefined;
    added[index] = (added[index] ?? 0) + 1;
    money -= next.unit.price ?? 0;
    cases -= next.unit.cases;
  }
  return added;
}

/** The candidate that one more unit of would last the shortest; −1 when each would last too long. */
function soonestUsed(candidates: readonly Candidate[], added: readonly number[]): number {
  let [soonest, best] = [Number.POSITIVE_INFINITY, -1];
  candidates.forEach(({ position, unit, bought, perDay, keepsDays }, index) => {
    if (unit.price === null || perDay <= 0) return;
    const stock = position.onHand + position.onOrder + (bought + (added[index] ?? 0) + 1) * unit.size;
    const days = stock / perDay;
    if (days > Math.min(MOST_DAYS_BOUGHT, keepsDays) || days >= soonest) return;
    [soonest, best] = [days, index];
  });
  return best;
}
