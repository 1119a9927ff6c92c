import jstat from "jstat";
import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";

const { jStat } = jstat;

/** Draws of one concern of a simulated bar; every draw is a quantile at a uniform number. */
export type Random = {
  /** Uniform on (0, 1). */
  uniform(): number;
  /** Standard normal, held within ±4. */
  normal(): number;
  /** Gamma with mean 1; its coefficient of variation is 1 ÷ √shape. */
  gamma(shape: number): number;
  poisson(mean: number): number;
  chance(probability: number): boolean;
  /** A whole number from `low` to `high`, both included. */
  whole(low: number, high: number): number;
  pick<T>(choices: readonly T[]): T;
  pickWeighted<T>(choices: readonly T[], weightOf: (choice: T) => number): T;
};

/**
 * A stream of draws for one concern ("demand", "counts") of one seed.
 *
 * Each concern has a stream of its own, so that planting a fault leaves the guests' orders as they were.
 * Generator: xoroshiro128+ from pure-rand, seeded by FNV-1a of the label mixed with the seed.
 */
export function randomStream(seed: number, concern: string): Random {
  const generator = xoroshiro128plus(hash(`${seed}/${concern}`));
  const uniform = () => Math.max(uniformFloat64(generator), Number.EPSILON);
  const normal = () => Math.min(4, Math.max(-4, jStat.normal.inv(uniform(), 0, 1)));
  const whole = (low: number, high: number) => low + Math.floor(uniform() * (high - low + 1));
  return {
    uniform,
    normal,
    gamma: (shape) => jStat.gamma.inv(uniform(), shape, 1 / shape),
    poisson: (mean) => poissonQuantile(uniform(), mean),
    chance: (probability) => uniform() < probability,
    whole,
    pick: (choices) => at(choices, whole(0, choices.length - 1)),
    pickWeighted: (choices, weightOf) => weightedQuantile(uniform(), choices, weightOf),
  };
}

/** The smallest count whose probability of not being passed reaches p. */
function poissonQuantile(p: number, mean: number): number {
  let count = 0;
  let term = Math.exp(-mean);
  let reached = term;
  while (reached < p && count < 20 * (mean + 10)) {
    count += 1;
    term *= mean / count;
    reached += term;
  }
  return count;
}

function weightedQuantile<T>(p: number, choices: readonly T[], weightOf: (choice: T) => number): T {
  let left = p * choices.reduce((sum, choice) => sum + weightOf(choice), 0);
  for (const choice of choices) {
    left -= weightOf(choice);
    if (left < 0) return choice;
  }
  return at(choices, choices.length - 1);
}

function at<T>(choices: readonly T[], index: number): T {
  if (choices.length === 0) throw new Error("nothing to choose from");
  return choices[index] as T;
}

/** FNV-1a, 32 bits. */
function hash(text: string): number {
  let value = 0x811c9dc5;
  for (const character of text) {
    value = Math.imul(value ^ (character.codePointAt(0) ?? 0), 0x01000193);
  }
  return value | 0;
}
