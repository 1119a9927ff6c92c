import type { Sparse } from "#engine/variance/causes/residuals.ts";
import { bestSize, type Sized, type SizeRule } from "#engine/variance/causes/size.ts";
import { leastSquares } from "#engine/variance/least-squares.ts";

/** A signature that can be chosen: its vector, what sizes it can have, and the log odds of it beforehand. */
export type Choice = {
  vector: Sparse;
  size: SizeRule;
  logOdds: number;
  /** Choices of one key say the same of the same thing; only one of them is chosen. */
  key: string;
};

/** A chosen signature with its size. */
export type Chosen<C extends Choice> = { choice: C; size: number };

/** No week has more causes than anyone can check. */
const MOST_CAUSES = 24;
const POLISH_ROUNDS = 12;

/**
 * The few choices that explain `values` best.
 *
 * Forward selection: the choice with the highest posterior odds, its size weighed in, joins; all sizes are
 * then fitted together, and each chosen one is exchanged where another now explains its part better. Stops
 * when the next one's odds are below `leastOdds` (in logarithms): it is not worth its cost.
 */
export function selectChoices<C extends Choice>(
  values: Float64Array,
  choices: readonly C[],
  leastOdds: number,
): Chosen<C>[] {
  let chosen: Chosen<C>[] = [];
  while (chosen.length < MOST_CAUSES) {
    const rest = remainder(values, chosen);
    const next = bestChoice(rest, choices, keysOf(chosen));
    if (next === undefined || next.score < leastOdds) break;
    chosen = refit(values, [...chosen, { choice: next.choice, size: next.size }]);
    chosen = exchange(values, choices, chosen);
  }
  return chosen.filter((entry) => {
    const rest = remainder(values, chosen, entry);
    return scoreOf(rest, entry.choice).score >= leastOdds;
  });
}

/** What the chosen ones leave unexplained; `but` one of them. */
export function remainder<C extends Choice>(
  values: Float64Array,
  chosen: readonly Chosen<C>[],
  but?: Chosen<C>,
): Float64Array {
  const rest = values.slice();
  for (const entry of chosen) if (entry !== but) subtract(rest, entry.choice.vector, entry.size);
  return rest;
}

function subtract(rest: Float64Array, { at, values }: Sparse, size: number): void {
  for (let index = 0; index < at.length; index++) {
    const row = at[index] ?? 0;
    rest[row] = (rest[row] ?? 0) - size * (values[index] ?? 0);
  }
}

function dot(rest: Float64Array, { at, values }: Sparse): number {
  let sum = 0;
  for (let index = 0; index < at.length; index++) sum += (rest[at[index] ?? 0] ?? 0) * (values[index] ?? 0);
  return sum;
}

/** A choice's best size against what is left, and its posterior odds against nothing, in logarithms. */
export function scoreOf(rest: Float64Array, { vector, size, logOdds }: Choice): Sized {
  const { size: best, score } = bestSize(size, dot(rest, vector), vector.length2);
  return { size: best, score: score + logOdds };
}

function bestChoice<C extends Choice>(
  rest: Float64Array,
  choices: readonly C[],
  taken: ReadonlySet<string>,
): (Sized & { choice: C }) | undefined {
  let best: (Sized & { choice: C }) | undefined;
  for (const choice of choices) {
    if (taken.has(choice.key)) continue;
    const sized = scoreOf(rest, choice);
    if (best === undefined || sized.score > best.score) best = { ...sized, choice };
  }
  return best;
}

function keysOf<C extends Choice>(chosen: readonly Chosen<C>[], but?: Chosen<C>): Set<string> {
  return new Set(chosen.filter((entry) => entry !== but).map(({ choice }) => choice.key));
}

/** Exchanges each chosen one for another that explains its part better, once through. */
function exchange<C extends Choice>(
  values: Float64Array,
  choices: readonly C[],
  chosen: Chosen<C>[],
): Chosen<C>[] {
  let current = chosen;
  for (let slot = 0; slot < current.length; slot++) {
    const entry = current[slot];
    if (entry === undefined) continue;
    const rest = remainder(values, current, entry);
    const better = bestChoice(rest, choices, keysOf(current, entry));
    if (better === undefined || better.choice === entry.choice) continue;
    if (better.score <= scoreOf(rest, entry.choice).score + 1e-9) continue;
    current = refit(values, current.with(slot, { choice: better.choice, size: better.size }));
  }
  return current;
}

/** All sizes together: least squares first, then each in turn by its own rule until they rest. */
function refit<C extends Choice>(values: Float64Array, chosen: Chosen<C>[]): Chosen<C>[] {
  let current = jointSizes(values, chosen) ?? chosen;
  for (let round = 0; round < POLISH_ROUNDS; round++) {
    let moved = 0;
    for (let slot = 0; slot < current.length; slot++) {
      const entry = current[slot];
      if (entry === undefined) continue;
      const { size } = scoreOf(remainder(values, current, entry), entry.choice);
      moved = Math.max(moved, Math.abs(size - entry.size) * Math.sqrt(entry.choice.vector.length2));
      current = current.with(slot, { choice: entry.choice, size });
    }
    if (moved < 1e-3) break;
  }
  return current.filter(({ size }) => size > 0);
}

/** The sizes of a free joint fit, where all of them come out as sizes; undefined where they do not. */
function jointSizes<C extends Choice>(
  values: Float64Array,
  chosen: readonly Chosen<C>[],
): Chosen<C>[] | undefined {
  if (chosen.length < 2) return undefined;
  const rows = [...new Set(chosen.flatMap(({ choice }) => choice.vector.at))];
  if (rows.length < chosen.length) return undefined;
  const place = new Map(rows.map((row, index) => [row, index]));
  const design = rows.map(() => chosen.map(() => 0));
  chosen.forEach(({ choice: { vector } }, column) => {
    vector.at.forEach((row, index) => {
      const line = design[place.get(row) ?? 0];
      if (line !== undefined) line[column] = vector.values[index] ?? 0;
    });
  });
  const fit = leastSquares(
    design,
    rows.map((row) => values[row] ?? 0),
  );
  if (fit === undefined || fit.coefficients.some((size) => !(size > 0))) return undefined;
  return chosen.map(({ choice }, column) => ({ choice, size: fit.coefficients[column] ?? 0 }));
}
