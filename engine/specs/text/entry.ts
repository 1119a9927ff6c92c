import type { Unit } from "#engine/measure/units.ts";

/** One line of spec text as read. With an `error` the rest is only what could be understood. */
export type SpecTextLine = {
  /** 1-based, in the text. */
  line: number;
  amount: number | null;
  unit: Unit | "top" | null;
  item: string | null;
  /** Items that may stand in for `item`. */
  orItems: string[];
  note: string | null;
  /** What is wrong, at the word not understood, and what to write instead. */
  error: string | null;
};

/** What a line says, before its item is looked up. */
export type Reading = Omit<SpecTextLine, "line">;

/** A line that cannot be read for certain: better refused than read wrongly. */
export class RefusedLine extends Error {
  readonly understood: Partial<Reading>;
  constructor(message: string, understood: Partial<Reading> = {}) {
    super(message);
    this.name = "RefusedLine";
    this.understood = understood;
  }
}
