import type { BuyingUnit } from "#engine/orders/purchase.ts";
import type { Of } from "#engine/stock/movement.ts";

/** A par as people say it: so many whole bottles or cases. */
export type ParInPacks = {
  quantity: number;
  of: Of;
  pack: string;
  /** The same in base units, never less than the par. */
  amount: number;
};

/**
 * A par in whole bottles, or in cases where only cases are sold and one at least is wanted; rounded up.
 *
 * 1640 ml in bottles of 700 → 3 bottles, 2100 ml; 31 in unsplit cases of 24 → 2 cases, 48.
 */
export function parInPacks(par: number, unit: BuyingUnit): ParInPacks {
  const containersInUnit = unit.of === "case" ? unit.pack.perCase : 1;
  const isCases = unit.of === "case" && par >= unit.size;
  const size = isCases ? unit.size : unit.size / containersInUnit;
  const quantity = Math.max(0, Math.ceil(par / size - 1e-9));
  return { quantity, of: isCases ? "case" : "container", pack: unit.pack.pack, amount: quantity * size };
}
