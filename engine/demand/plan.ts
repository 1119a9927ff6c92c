import { z } from "zod";
import { BusinessDate } from "#engine/time.ts";

/** A known busy or quiet day: factor 1.4 = 40 % busier, 0 = closed. */
export const EventDay = z.strictObject({
  date: BusinessDate,
  event: z.string(),
  factor: z.number().nonnegative(),
});
export type EventDay = z.infer<typeof EventDay>;

/** Drinks planned beyond the usual: a party, a new drink. */
export const Plan = z.strictObject({
  date: BusinessDate,
  drink: z.string(),
  serves: z.number().nonnegative(),
});
export type Plan = z.infer<typeof Plan>;
