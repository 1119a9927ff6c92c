import type { Making } from "#engine/prep/making.ts";
import type { Input } from "#engine/prep/weights.ts";
import { fruitOf } from "#engine/specs/fruit.ts";

/**
 * What a batch of so many base units takes, in each input's base unit; fruit by the shared-parts rule of this batch
 * alone. Grows in proportion: twice the batch takes twice of everything.
 */
export function inputsOf(making: Making, make: number): Input[] {
  const taken = new Map(making.inputs.map(({ item, perUnit }) => [item, perUnit * make]));
  for (const { item, amount } of fruitOf(making)) {
    taken.set(item, (taken.get(item) ?? 0) + amount * make);
  }
  return [...taken].map(([item, amount]) => ({ item, amount }));
}
