import { z } from "zod";

/** From where on a venue wants to hear of a variance. */
export const Thresholds = z.strictObject({
  /** Of |unexplained| ÷ sd. */
  watchRatio: z.number().positive(),
  chaseRatio: z.number().positive(),
  /** Money at stake below which nothing is chased, in major units. */
  chaseMoney: z.number().min(0),
  /** Share of false alarms borne among all items that are not quiet. */
  falseAlarmRate: z.number().gt(0).lt(1),
});
export type Thresholds = z.infer<typeof Thresholds>;
