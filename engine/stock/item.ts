import { z } from "zod";
import { BaseUnit, Unit } from "#engine/measure/units.ts";
import { BusinessDate } from "#engine/time.ts";

/** Anything that is counted: a spirit, a syrup, limes, straws. Null stands for a fact not known. */
export const Item = z.strictObject({
  name: z.string().min(1),
  category: z.string().min(1),
  base: BaseUnit,
  abv: z.number().min(0).max(100).nullable(),
  brix: z.number().min(0).max(100).nullable(),
  densityGPerMl: z.number().positive().nullable(),
  pieceG: z.number().positive().nullable(),
  shelfLifeDays: z.number().positive().nullable(),
  allergens: z.array(z.string().min(1)),
  inHouse: z.boolean(),
  /** False for what is made to order: drinks then use its inputs, not the item. */
  stocked: z.boolean(),
  pour: z.enum(["jigger", "free", "measured"]),
  serviceLevel: z.number().gt(0).lt(1).nullable(),
  /** Par set by hand, in base units, in place of the computed one; null follows the computed one. */
  par: z.number().nonnegative().nullable().default(null),
  /** Why it was set so. */
  parReason: z.string().default(""),
  note: z.string(),
});
export type Item = z.infer<typeof Item>;

/** A form in which an item is bought, with its price from one day on. */
export const Pack = z.strictObject({
  item: z.string(),
  pack: z.string().min(1),
  amount: z.number().positive(),
  unit: Unit,
  /** First day of this price; null = always. */
  from: BusinessDate.nullable(),
  perCase: z.number().int().positive(),
  supplier: z.string().nullable(),
  code: z.string(),
  gtin: z.string(),
  /** Major units of the venue's currency; a unit price, so it may be finer than a coin. */
  price: z.number().nonnegative().nullable(),
  pricePer: z.enum(["container", "case"]),
  /** Whether single containers of a case are sold. */
  split: z.boolean(),
  emptyG: z.number().nonnegative().nullable(),
  fullG: z.number().positive().nullable(),
  /** Paid on a container and given back for the empty one; no part of what the item costs. */
  depositMinor: z.number().int().nonnegative().nullable().default(null),
});
export type Pack = z.infer<typeof Pack>;

/** That an item stands in an area, and where in its shelf order. */
export const Shelf = z.strictObject({
  area: z.string().min(1),
  item: z.string(),
  shelf: z.number(),
});
export type Shelf = z.infer<typeof Shelf>;
