import type { Sparse } from "#engine/variance/causes/residuals.ts";
import { bestSize, type Sized, type SizeRule } from "#engine/variance/causes/size.ts";

/** A signature that can be chosen: its vector, what sizes it can have, and the log odds of it beforehand. */
export type Choice = {
  vector: Sparse;
  size: SizeRule;
  logOdds: number;
  /** Of how many windows it speaks, over all its items. */
  spans: number;
  /** The kind of thing it stands for. */
  family: string;
  /** Choices of one key say the same of the same thing; only one of them is chosen. */
  key: string;
};

/**
 * All choices with their products with what is left of the residuals.
 *
 * A large bar has tens of thousands of choices, of which one more chosen touches a few; only the products of those
 * are reckoned anew, found by the rows that changed.
 */
export class Board<C extends Choice> {
  readonly choices: readonly C[];
  readonly #rest: Float64Array;
  readonly #along: Float64Array;
  readonly #length2: Float64Array;
  readonly #logOdds: Float64Array;
  /** By row: the choices that have an entry there, and the entries. */
  readonly #ofRow: { choices: number[]; values: number[] }[];

  constructor(choices: readonly C[], rows: number) {
    this.choices = choices;
    this.#rest = new Float64Array(rows);
    this.#along = new Float64Array(choices.length);
    this.#length2 = Float64Array.from(choices, ({ vector }) => vector.length2);
    this.#logOdds = Float64Array.from(choices, ({ logOdds }) => logOdds);
    this.#ofRow = Array.from({ length: rows }, () => ({ choices: [], values: [] }));
    for (let index = 0; index < choices.length; index++) {
      const vector = choices[index]?.vector;
      if (vector === undefined) continue;
      for (let entry = 0; entry < vector.at.length; entry++) {
        const own = this.#ofRow[vector.at[entry] ?? 0];
        own?.choices.push(index);
        own?.values.push(vector.values[entry] ?? 0);
      }
    }
  }

  /** The choice with the best score against what is left, of those allowed and not of a key that is taken. */
  best(
    rest: Float64Array,
    taken: ReadonlySet<string>,
    isAllowed: (choice: C) => boolean,
  ): (Sized & { choice: C }) | undefined {
    this.#follow(rest);
    let best: (Sized & { choice: C }) | undefined;
    let bestScore = Number.NEGATIVE_INFINITY;
    for (let index = 0; index < this.choices.length; index++) {
      const along = this.#along[index] ?? 0;
      const length2 = this.#length2[index] ?? 0;
      const logOdds = this.#logOdds[index] ?? 0;
      // No size gains anything against the grain, nor more than the freely fitted one; most choices end here.
      if (along <= 0 && length2 > 0 && bestScore > logOdds) continue;
      if ((along * along) / (2 * length2) + logOdds <= bestScore || length2 === 0) continue;
      const choice = this.choices[index];
      if (choice === undefined || taken.has(choice.key) || !isAllowed(choice)) continue;
      const { size, score } = bestSize(choice.size, along, length2);
      if (score + logOdds > bestScore) {
        bestScore = score + logOdds;
        best = { size, score: bestScore, choice };
      }
    }
    return best;
  }

  /** The choices that share a row with a vector. */
  touching({ at }: Sparse): C[] {
    const found = new Set(at.flatMap((row) => this.#ofRow[row]?.choices ?? []));
    return [...found].flatMap((index) => this.choices[index] ?? []);
  }

  /** Brings the products up to what is left now. */
  #follow(rest: Float64Array): void {
    for (let row = 0; row < rest.length; row++) {
      const change = (rest[row] ?? 0) - (this.#rest[row] ?? 0);
      if (change === 0) continue;
      this.#rest[row] = rest[row] ?? 0;
      const own = this.#ofRow[row];
      if (own === undefined) continue;
      for (let entry = 0; entry < own.choices.length; entry++) {
        const index = own.choices[entry] ?? 0;
        this.#along[index] = (this.#along[index] ?? 0) + change * (own.values[entry] ?? 0);
      }
    }
  }
}
