import { itemNamed } from "#engine/catalogue.ts";
import { unitCosts } from "#engine/costing/unit-cost.ts";
import type { Facts } from "#engine/facts.ts";
import { criticalRatio } from "#engine/orders/par.ts";
import type { Making } from "#engine/prep/making.ts";
import type { DrinksDemand } from "#engine/prep/taken.ts";
import { daysServed } from "#engine/prep/use-by.ts";
import type { BusinessDate, Instant } from "#engine/time.ts";

/** However dear the waste, even chances of lasting the night; however cheap, not a chance that no forecast can tell. */
const LEAST_LEVEL = 0.5;
const MOST_LEVEL = 0.995;

/**
 * The chance of lasting that pays best, for each prep whose leftovers are thrown out tonight (the newsvendor's ratio).
 *
 * Short: what the drinks that need it earn by a base unit of it; over: what a base unit costs to make, without labour,
 * since the hands are there anyway. From 0.5 to 0.995. Left out, and so at the usual service level: what keeps until
 * tomorrow, what has a service level of its own in the sheet, and what has no known cost or earns in no priced drink.
 * Juice at 0.01 a ml, 25 ml in a drink that earns 7.50 (0.30 a ml) → 0.30 ÷ 0.31 = 0.968.
 */
export function tonightLevels(
  facts: Facts,
  {
    makings,
    demand,
    date,
    at,
  }: { makings: readonly Making[]; demand: DrinksDemand; date: BusinessDate; at: Instant },
): Map<string, number> {
  const dying = makings.filter(
    ({ prep, shelfLifeDays }) =>
      shelfLifeDays !== null &&
      daysServed(shelfLifeDays) === 1 &&
      itemNamed(facts.catalogue, prep).serviceLevel === null,
  );
  if (dying.length === 0 || demand.marginsOn === undefined) return new Map();
  const margins = demand.marginsOn(date);
  const costs = unitCosts(facts, at);
  return new Map(
    dying.flatMap(({ prep }) => {
      const ratio = criticalRatio({
        shortCost: margins.get(prep) ?? null,
        overCost: costs.get(prep) ?? null,
      });
      return ratio === null ? [] : [[prep, Math.min(MOST_LEVEL, Math.max(LEAST_LEVEL, ratio))] as const];
    }),
  );
}
