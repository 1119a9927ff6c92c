import { z } from "zod";
import { Unit } from "#engine/measure/units.ts";

/** What the till's name for something means: a drink, an item poured straight, or nothing. */
export const RingName = z.strictObject({
  ringName: z.string().min(1),
  soldAs: z.discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("drink"), drink: z.string() }),
    z.strictObject({ kind: z.literal("item"), item: z.string() }),
    z.strictObject({ kind: z.literal("ignore") }),
  ]),
  serves: z.number().positive(),
  /** Of an item, per sale; null = one container of its smallest pack. */
  amount: z.number().positive().nullable(),
  unit: Unit.nullable(),
});
export type RingName = z.infer<typeof RingName>;

/** What a till's modifier does to one serve. Several rows of one modifier all apply, in their order. */
export const Modifier = z.strictObject({
  modifier: z.string().min(1),
  effect: z.enum(["swap", "add", "remove", "times", "none"]),
  item: z.string().nullable(),
  with: z.string().nullable(),
  amount: z.number().positive().nullable(),
  unit: Unit.nullable(),
  factor: z.number().nonnegative().nullable(),
});
export type Modifier = z.infer<typeof Modifier>;
