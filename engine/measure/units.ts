import { z } from "zod";

/** The units a sheet may name. `oz` is always fluid; `oz-wt` is the ounce avoirdupois. */
export const UNITS = [
  "oz",
  "ml",
  "cl",
  "dl",
  "l",
  "tsp",
  "tbsp",
  "cup",
  "dash",
  "barspoon",
  "drop",
  "splash",
  "g",
  "kg",
  "lb",
  "oz-wt",
  "each",
  "piece",
] as const;
export const Unit = z.enum(UNITS);
export type Unit = z.infer<typeof Unit>;

/** The one unit an item is kept in. */
export const BaseUnit = z.enum(["ml", "g", "each"]);
export type BaseUnit = z.infer<typeof BaseUnit>;

const ABOVE_NONE = "a measure is more than 0 ml";

/** Sizes in ml of the measures that no law defines; each venue may set its own. */
export const HouseMl = z.strictObject({
  dash: z.number().positive(ABOVE_NONE),
  barspoon: z.number().positive(ABOVE_NONE),
  drop: z.number().positive(ABOVE_NONE),
  splash: z.number().positive(ABOVE_NONE),
});
export type HouseMl = z.infer<typeof HouseMl>;

/** Common practice: 32 dashes to the US ounce, a 5 ml barspoon, 20 drops to the ml, a splash of 1/4 oz. */
export const DEFAULT_HOUSE_ML: HouseMl = { dash: 0.92, barspoon: 5, drop: 0.05, splash: 7.4 };

/** What a venue means by "oz", and how big its house measures are. */
export type Measures = { oz: "us" | "imperial"; houseMl: HouseMl };
