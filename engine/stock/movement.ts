import { z } from "zod";
import { Unit } from "#engine/measure/units.ts";
import { Instant } from "#engine/time.ts";

export const Of = z.enum(["container", "case"]);
export type Of = z.infer<typeof Of>;

/** What one person found of one item, of one pack, in one area. `full` 0 with no part means none there. */
export const CountRow = z.strictObject({
  count: z.string().min(1),
  at: Instant,
  area: z.string().min(1),
  item: z.string(),
  pack: z.string().nullable(),
  /** Whole containers. */
  full: z.number().nonnegative().nullable(),
  /** Open containers by their level, each 0 to 1. */
  parts: z.array(z.number().min(0).max(1)),
  /** Open containers on the scale, gross grams. */
  grossG: z.array(z.number().nonnegative()),
  amount: z.number().nonnegative().nullable(),
  unit: Unit.nullable(),
  by: z.string(),
});
export type CountRow = z.infer<typeof CountRow>;

export const Delivery = z.strictObject({
  at: Instant,
  supplier: z.string(),
  invoice: z.string(),
  item: z.string(),
  pack: z.string(),
  quantity: z.number().nonnegative(),
  of: Of,
  /** What the goods cost, without deposits. */
  priceTotalMinor: z.number().int().nonnegative().nullable(),
  /** Deposits that the invoice charges on this line; null where nobody wrote them. */
  depositMinor: z.number().int().nonnegative().nullable().default(null),
  /** Empty containers of this pack handed back with the delivery; null where nobody wrote them. */
  empties: z.number().nonnegative().nullable().default(null),
  by: z.string(),
});
export type Delivery = z.infer<typeof Delivery>;

/** One making of a prep. */
export const Batch = z.strictObject({
  at: Instant,
  prep: z.string(),
  made: z.number().positive(),
  unit: Unit,
  by: z.string(),
  note: z.string(),
});
export type Batch = z.infer<typeof Batch>;

/** What one batch really used of one item, in place of what its spec says; 0 where it took none. */
export const UsedInput = z.strictObject({ item: z.string(), amount: z.number().nonnegative(), unit: Unit });
export type UsedInput = z.infer<typeof UsedInput>;

/** The same as a sheet holds it: which batch is told by its moment, its prep, and its number among those of one moment. */
export const BatchInput = z.strictObject({
  at: Instant,
  prep: z.string(),
  /** 1 for the first batch of the prep at that moment, in the order of the batches. */
  batchNo: z.number().int().positive(),
  ...UsedInput.shape,
});
export type BatchInput = z.infer<typeof BatchInput>;

/** A batch as it is entered, corrected and taken back: with what it really used, if not all as its spec says. */
export const BatchEntry = Batch.extend({ inputs: z.array(UsedInput).optional() });
export type BatchEntry = z.infer<typeof BatchEntry>;

export const LOSS_KINDS = ["waste", "spill", "breakage", "staff", "tasting", "comp", "expired"] as const;

/** Stock gone without a sale. With unit `serve`, `what` is a drink and is exploded like a sale. */
export const Loss = z.strictObject({
  at: Instant,
  kind: z.enum(LOSS_KINDS),
  what: z.string(),
  amount: z.number().positive(),
  unit: z.union([Unit, z.literal("serve")]),
  by: z.string(),
  note: z.string(),
});
export type Loss = z.infer<typeof Loss>;

export const Transfer = z.strictObject({
  at: Instant,
  direction: z.enum(["in", "out"]),
  place: z.string().min(1),
  item: z.string(),
  amount: z.number().positive(),
  unit: Unit,
});
export type Transfer = z.infer<typeof Transfer>;
