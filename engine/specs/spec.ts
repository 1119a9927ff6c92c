import { z } from "zod";
import { Unit } from "#engine/measure/units.ts";
import { BusinessDate } from "#engine/time.ts";

export const ICES = ["none", "cubed", "crushed", "large"] as const;
export const TECHNIQUES = ["built", "shaken", "stirred", "blended", "thrown"] as const;

export const Drink = z.strictObject({
  name: z.string().min(1),
  priceMinor: z.number().int().nonnegative().nullable(),
  glass: z.string(),
  glassMl: z.number().positive().nullable(),
  ice: z.enum(ICES).nullable(),
  technique: z.enum(TECHNIQUES).nullable(),
  garnishNote: z.string(),
  method: z.string(),
  allergens: z.array(z.string().min(1)),
  onMenuFrom: BusinessDate.nullable(),
  onMenuUntil: BusinessDate.nullable(),
});
export type Drink = z.infer<typeof Drink>;

/** How a prep is made from one day on: what its spec lines yield, and the sizes of a batch. */
export const PrepVersion = z.strictObject({
  prep: z.string(),
  from: BusinessDate,
  yield: z.number().positive(),
  unit: Unit,
  /** Batches are whole multiples of this, in `unit`. */
  batchStep: z.number().positive().nullable(),
  /** The most one batch can be, in `unit`. */
  vesselMax: z.number().positive().nullable(),
  activeMinutes: z.number().nonnegative().nullable(),
  standingHours: z.number().nonnegative().nullable(),
  shelfLifeDays: z.number().positive().nullable(),
  method: z.string(),
});
export type PrepVersion = z.infer<typeof PrepVersion>;

/** One line of a version; the lines of one `makes` and one `from` are the version. */
export const SpecLine = z.strictObject({
  makes: z.string(),
  from: BusinessDate,
  line: z.number(),
  /** Null with unit `top`: filled up, estimated. */
  amount: z.number().positive().nullable(),
  unit: z.union([Unit, z.literal("top")]),
  item: z.string(),
  orItems: z.array(z.string()),
  note: z.string(),
});
export type SpecLine = z.infer<typeof SpecLine>;

/** What one piece of a fruit (or egg, or bunch) gives, and of which of its parts it takes. */
export const Cut = z.strictObject({
  source: z.string(),
  /** A new yield's first day; null = always. */
  from: BusinessDate.nullable(),
  gives: z.string(),
  perPiece: z.number().positive(),
  unit: Unit,
  parts: z.array(z.string().min(1)).min(1),
});
export type Cut = z.infer<typeof Cut>;
