import type { BaseUnit, Unit } from "#engine/measure/units.ts";
import type { TextId } from "../texts/catalogues.ts";

/** How an item is counted: containers with open ones by eye or on the scale, or a plain amount. */
export type Way = "eye" | "scale" | "amount";

export const WAY_TEXTS = {
  eye: "count.byEye",
  scale: "count.onTheScale",
  amount: "count.asAmount",
} as const satisfies Record<Way, TextId>;

/** The units an amount of each base unit is read in at a shelf. */
export const BASE_UNITS_OF: Record<BaseUnit, readonly Unit[]> = {
  ml: ["ml", "cl", "oz", "l"],
  g: ["g", "kg"],
  each: ["each"],
};
