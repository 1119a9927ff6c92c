import { unitFactor } from "#engine/measure/unit-factor.ts";
import type { BaseUnit, Measures, Unit } from "#engine/measure/units.ts";

/** What must be known of an item to turn any amount of it into its base unit. */
export type Convertible = {
  base: BaseUnit;
  /** As it is used for this item, wherever it comes from; null when not known. */
  densityGPerMl: number | null;
  /** Weight of one piece; null when not known. */
  pieceG: number | null;
};

/**
 * An amount in a unit as the item's base unit, or undefined when nothing known of the item leads there.
 *
 * Volume and weight meet through density, weight and pieces through the weight of a piece.
 * 1 kg of a syrup of 1.23 g/ml kept in ml → 813.0; 2 lb of limes of 80 g kept in pieces → 11.34.
 */
export function toBase(
  amount: number,
  unit: Unit,
  item: Convertible,
  measures: Measures,
): number | undefined {
  const { base, factor } = unitFactor(unit, measures);
  const ratio = baseRatio(base, item);
  return ratio === undefined ? undefined : amount * factor * ratio;
}

/** How many of the item's base unit one ml, g or piece of it is. */
function baseRatio(given: BaseUnit, item: Convertible): number | undefined {
  if (given === item.base) return 1;
  const gramsGiven = gramsPer(given, item);
  const gramsBase = gramsPer(item.base, item);
  if (gramsGiven === undefined || gramsBase === undefined) return undefined;
  return gramsGiven / gramsBase;
}

function gramsPer(unit: BaseUnit, item: Convertible): number | undefined {
  if (unit === "g") return 1;
  return (unit === "ml" ? item.densityGPerMl : item.pieceG) ?? undefined;
}
