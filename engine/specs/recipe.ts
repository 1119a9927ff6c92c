import { baseAmount, type Catalogue } from "#engine/catalogue.ts";
import type { BusinessDate } from "#engine/time.ts";
import { inForce } from "#engine/versions.ts";

/** How one base unit of an item is made: cut from a fruit, made of inputs, or both. */
export type Recipe = {
  cut: { source: string; perPiece: number; parts: readonly string[] } | undefined;
  /** Amount of each input, in its base unit, per base unit made. */
  inputs: { item: string; perUnit: number }[];
};

/**
 * The recipe of an item on a date, or undefined when nothing says how it is made (a bought item, or a
 * prep before its first version). The yield comes from the latest `preps` row in force, the lines from
 * the latest spec in force, each for itself. `perPiece` is in the item's base unit.
 */
export function recipeInForce(catalogue: Catalogue, name: string, date: BusinessDate): Recipe | undefined {
  const cut = inForce(catalogue.cuts.get(name) ?? [], date);
  const prep = inForce(catalogue.preps.get(name) ?? [], date);
  const spec = inForce(catalogue.specs.get(name) ?? [], date);
  const madeOfLines = prep !== undefined && spec !== undefined && !catalogue.drinks.has(name);
  if (cut === undefined && !madeOfLines) return undefined;
  return {
    cut: cut && {
      source: cut.source,
      parts: cut.parts,
      perPiece: baseAmount(catalogue, { item: name, amount: cut.perPiece, unit: cut.unit }),
    },
    inputs: madeOfLines
      ? spec.lines.flatMap((line) => {
          if (line.amount === null || line.unit === "top") return [];
          const { item, amount, unit } = line;
          const yielded = baseAmount(catalogue, { item: name, amount: prep.yield, unit: prep.unit });
          return { item, perUnit: baseAmount(catalogue, { item, amount, unit }) / yielded };
        })
      : [],
  };
}
