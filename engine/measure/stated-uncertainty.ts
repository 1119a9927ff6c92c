import { z } from "zod";

/** How sure a venue is of what it reads, weighs and pours: standard deviations, relative where a share. */
export const Uncertainty = z.strictObject({
  /** Of the level of one open container judged by eye, as a share of the container. */
  reading: z.number().nonnegative(),
  /** Of the weight of one open container, in g. */
  scaleG: z.number().nonnegative(),
  /** Of one pour through a jigger, relative to the pour. */
  pourJigger: z.number().nonnegative(),
  /** Of one free pour, relative to the pour. */
  pourFree: z.number().nonnegative(),
  /** Of what one batch yields, relative to its expected yield. */
  yield: z.number().nonnegative(),
  /** Of an amount measured in ml. */
  ml: z.number().nonnegative(),
  /** Of a counted amount, in pieces. */
  each: z.number().nonnegative(),
});
export type Uncertainty = z.infer<typeof Uncertainty>;
