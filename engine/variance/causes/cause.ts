import type { Correction } from "#engine/variance/causes/correction.ts";

/** The kinds of cause that are looked for. */
export const CAUSE_KINDS = [
  "delivery-not-entered",
  "delivery-entered-twice",
  "delivery-short",
  "container-miscounted",
  "area-skipped",
  "wrong-pack-size",
  "poured-for-another",
  "rung-for-another",
  "not-rung",
  "over-pour",
  "older-spec",
  "batch-not-logged",
  "batch-thrown-out",
  "breakage",
  "yield-drift",
  "unmapped-sale",
  "unit-slip",
] as const;
export type CauseKind = (typeof CAUSE_KINDS)[number];

/** A likely cause of what is unexplained, with the check that would tell. Never a person. */
export type Cause = {
  kind: CauseKind;
  /** The item, drink, prep or ring name; with two, [rung or specified, made or poured]. */
  what: string | [string, string];
  /** Always positive; the kind gives the direction. */
  size: number;
  unit: string;
  /** Among the explanations of the same numbers, and that there is nothing to explain. */
  probability: number;
  /** What the cause explains of each item's unexplained amount, in base units. */
  evidence: { item: string; amount: number; unit?: string }[];
  check: string;
  /** container-miscounted: +1 counted too many, −1 too few. */
  sign?: 1 | -1;
  /** container-miscounted, area-skipped: the count that is off. */
  count?: string;
  /** What it changes in the book once its check has confirmed it; null where the book is right as it stands. */
  correction: Correction | null;
  /** Causes of one group explain the same numbers: at most one of them is true. */
  group: number;
};
