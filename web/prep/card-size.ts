import type { BaseUnit } from "#engine/measure/units.ts";

/** How large a batch is to be: as planned, a full vessel, a wanted amount, or as much as one input makes. */
export type CardSize =
  | { way: "planned" }
  | { way: "vessel" }
  | { way: "amount"; make: number }
  | { way: "have"; item: string; amount: number };

/** The ways, in the order of their keys. */
export const WAYS = [
  { way: "planned", text: "prep.wayPlanned" },
  { way: "amount", text: "prep.wayAmount" },
  { way: "have", text: "prep.wayHave" },
  { way: "vessel", text: "prep.wayVessel" },
] as const;

export type Way = CardSize["way"];

/** What an amount of an item is typed in. */
export const UNIT_WORD = {
  ml: "prep.typedMl",
  g: "prep.typedG",
  each: "prep.typedEach",
} as const satisfies Record<BaseUnit, string>;
