import type { Wanted } from "#engine/orders/budget.ts";
import { MOST_DAYS_BOUGHT } from "#engine/orders/purchase.ts";

/** More of a pack than par asks for, to reach a supplier's minimum. */
export type Addition = {
  item: string;
  pack: string;
  quantity: number;
  of: "container" | "case";
  cost: number;
};

type Candidate = Wanted & { bought: number; perDay: number; keepsDays: number };

/**
 * What to add to an order that falls short of its supplier's minimum: unit by unit of what will be used up
 * soonest, and nothing that would stand for two months or past its shelf life.
 *
 * Empty when the minimum is met, when nothing is ordered, or when nothing sensible reaches it: then waiting for
 * the next order, or asking the supplier, is the better way.
 */
export function additionsTo(
  minimum: { missingValue: number; missingCases: number },
  candidates: readonly Candidate[],
): Addition[] {
  let { missingValue, missingCases } = minimum;
  const added = candidates.map(() => 0);
  while (missingValue > 1e-9 || missingCases > 1e-9) {
    const index = soonestUsed(candidates, added);
    const next = candidates[index];
    if (next === undefined) return [];
    added[index] = (added[index] ?? 0) + 1;
    missingValue -= next.unit.price ?? 0;
    missingCases -= next.unit.cases;
  }
  return candidates.flatMap(({ unit }, index) => {
    const quantity = added[index] ?? 0;
    if (quantity === 0) return [];
    const { item, pack } = unit.pack;
    return [{ item, pack, quantity, of: unit.of, cost: quantity * (unit.price ?? 0) }];
  });
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
