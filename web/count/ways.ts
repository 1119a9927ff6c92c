import type { BaseUnit, Unit } from "#engine/measure/units.ts";

/** How an item is counted: containers with open ones by eye or on the scale, or a plain amount. */
export type Way = "eye" | "scale" | "amount";

export const WAY_WORDS: Record<Way, string> = {
  eye: "By eye",
  scale: "On the scale",
  amount: "As an amount",
};

/** The units an amount of each base unit is read in at a shelf. */
export const BASE_UNITS_OF: Record<BaseUnit, readonly Unit[]> = {
  ml: ["ml", "cl", "oz", "l"],
  g: ["g", "kg"],
  each: ["each"],
};
