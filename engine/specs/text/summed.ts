import { unitFactor } from "#engine/measure/unit-factor.ts";
import { DEFAULT_HOUSE_ML, type Unit } from "#engine/measure/units.ts";
import { readUnit } from "#engine/specs/text/measure-words.ts";
import { quantityIn } from "#engine/specs/text/quantity.ts";

/** Units of one system, whose ratio is exact in every venue; an ounce and a teaspoon are not always of one. */
const SYSTEMS: readonly (readonly Unit[])[] = [
  ["tsp", "tbsp", "cup"],
  ["ml", "cl", "dl", "l"],
  ["g", "kg"],
  ["oz-wt", "lb"],
];

/**
 * "1/2 cup plus 1 tbsp lemon juice" is 0.5625 cup: two measures of one item that add up, in the unit of the first.
 *
 * Undefined where no second measure is added, or where the two have no exact ratio.
 */
export function summed(first: {
  amount: number;
  unit: Unit;
  rest: string;
}): { amount: number; rest: string; note: string } | undefined {
  const added = /^\s*(\+|plus|and|&)\s+(?=\S)/i.exec(first.rest);
  const more = added === null ? undefined : quantityIn(first.rest.slice(added[0].length));
  const unit = more === undefined ? undefined : readUnit(more.rest);
  if (added === null || more === undefined || more.range !== null || unit === undefined) return undefined;
  const isOne =
    unit.unit === first.unit || SYSTEMS.some((s) => s.includes(unit.unit) && s.includes(first.unit));
  if (!isOne) return undefined;
  const inFirst = (more.amount * unit.factor * factorOf(unit.unit)) / factorOf(first.unit);
  const written = first.rest
    .slice(added[0].length, first.rest.length - unit.rest.length)
    .trim()
    .replace(/\.$/, "");
  return {
    amount: first.amount + inFirst,
    rest: unit.rest,
    note: `${first.amount} ${first.unit} plus ${written}`,
  };
}

function factorOf(unit: Unit): number {
  return unitFactor(unit, { oz: "us", houseMl: DEFAULT_HOUSE_ML }).factor;
}
