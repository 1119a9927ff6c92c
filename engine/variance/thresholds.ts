import { z } from "zod";

const ABOVE_NONE = "it is more than 0";
const WITHIN = "a share is more than 0 % and less than 100 %";

/** A chance or a part of a whole that is neither none nor all of it. */
export const Share = z.number().gt(0, WITHIN).lt(1, WITHIN);

/** From where on a venue wants to hear of a variance. */
export const Thresholds = z.strictObject({
  /** Of |unexplained| ÷ sd. */
  watchRatio: z.number().positive(ABOVE_NONE),
  chaseRatio: z.number().positive(ABOVE_NONE),
  /** Money at stake below which nothing is chased, in major units. */
  chaseMoney: z.number().min(0, "money at stake is 0 or more"),
  /** Share of false alarms borne among all items that are not quiet. */
  falseAlarmRate: Share,
});
export type Thresholds = z.infer<typeof Thresholds>;
