import type { Board, Choice } from "#engine/variance/causes/board.ts";
import type { Sparse } from "#engine/variance/causes/residuals.ts";
import { bestSize, type Sized } from "#engine/variance/causes/size.ts";
import { leastSquares } from "#engine/variance/least-squares.ts";

/** A chosen signature with its size. */
export type Chosen<C extends Choice> = { choice: C; size: number };

/** A skipped back bar is thirty causes; more than that nobody can check. */
const MOST_CAUSES = 40;
const POLISH_ROUNDS = 12;
/** Beyond so many the search is not made anew: no second thought makes sense of such a week. */
const MOST_DOUBTS = 8;
const MOST_RETHOUGHT = 20;
/** Beyond so many at once the sizes are fitted in turn alone: it comes to the same, and sooner. */
const MOST_JOINT = 12;

/**
 * The few choices that explain `values` best.
 *
 * Forward selection: the choice with the highest posterior odds, its size weighed in, joins; all sizes are
 * then fitted together, and each chosen one is exchanged where another now explains its part better. Stops
 * when the next one's odds are below `leastOdds` (in logarithms): it is not worth its cost.
 *
 * One signature over several items or windows can stand for two true ones and bar the way to both, so the search is made
 * anew without each family that was chosen, and without each chosen one and all that touch its items; the
 * answer with the best odds as a whole is kept.
 */
export function selectChoices<C extends Choice>(
  values: Float64Array,
  board: Board<C>,
  leastOdds: number,
): Chosen<C>[] {
  const search = { values, board, leastOdds, isAllowed: () => true };
  const given = likelyBefore(values, board, leastOdds);
  let best = extend(search, given);
  const consider = (start: Chosen<C>[], isAllowed: (choice: C) => boolean) => {
    const detour = extend({ ...search, isAllowed }, start);
    const instead = extend(search, detour);
    if (totalOf(values, instead) > totalOf(values, best) + 1e-6) best = instead;
  };
  const tried = new Set<string>();
  for (let families = nextDetour(best, tried); families !== undefined; families = nextDetour(best, tried)) {
    const without = families;
    const kept = given.filter(({ choice }) => !without.has(choice.family));
    consider(kept, ({ family }) => !without.has(family));
  }
  for (const { choice: doubted } of doubtful(best)) {
    if (!best.some(({ choice }) => choice === doubted)) continue;
    const apart = best.filter(({ choice }) => !overlaps(choice, doubted));
    consider(refit(values, apart), ({ key }) => key !== doubted.key);
  }
  return best.filter((entry) => scoreOf(remainder(values, best, entry), entry.choice).score >= leastOdds);
}

/** From these log odds on a choice is likelier than not before any number was looked at (three to one). */
const LIKELY_BEFORE = Math.log(3);

/**
 * What the book itself makes likelier than not (an area entered as none throughout, an invoice that stands there
 * twice) comes first, as far as the numbers bear it out: else something rarer that fits two of its items would.
 */
function likelyBefore<C extends Choice>(
  values: Float64Array,
  { choices }: Board<C>,
  leastOdds: number,
): Chosen<C>[] {
  let chosen: Chosen<C>[] = [];
  for (const choice of choices) {
    if (choice.logOdds < LIKELY_BEFORE || keysOf(chosen).has(choice.key)) continue;
    const { size, score } = scoreOf(remainder(values, chosen), choice);
    if (score >= Math.max(leastOdds, choice.logOdds)) chosen = [...chosen, { choice, size }];
  }
  return refit(values, chosen);
}

/** Those that speak of several items or windows; none when there are so many that the week is a wreck. */
function doubtful<C extends Choice>(chosen: readonly Chosen<C>[]): Chosen<C>[] {
  const several = chosen.filter(({ choice }) => choice.spans > 1);
  return chosen.length > MOST_RETHOUGHT || several.length > MOST_DOUBTS ? [] : several;
}

/** Each family of the doubtful ones by itself, and all of them. */
function detours(chosen: readonly Chosen<Choice>[]): Set<string>[] {
  const families = new Set(doubtful(chosen).map(({ choice }) => choice.family));
  const single = [...families].map((family) => new Set([family]));
  return families.size > 1 ? [...single, families] : single;
}

/** A detour that was not tried yet; a better answer by one can bring doubtful families of its own. */
function nextDetour(chosen: readonly Chosen<Choice>[], tried: Set<string>): Set<string> | undefined {
  const isNew = (families: Set<string>) => !tried.has([...families].sort().join(" "));
  const next = detours(chosen).find(isNew);
  if (next !== undefined) tried.add([...next].sort().join(" "));
  return next;
}

function overlaps(a: Choice, b: Choice): boolean {
  const rows = new Set(b.vector.at);
  return a.vector.at.some((row) => rows.has(row));
}

/** What is searched, and which choices may be taken. */
type Search<C extends Choice> = {
  values: Float64Array;
  board: Board<C>;
  leastOdds: number;
  isAllowed: (choice: C) => boolean;
};

/** Adds the best choice again and again while it is worth its cost. */
function extend<C extends Choice>(search: Search<C>, start: Chosen<C>[]): Chosen<C>[] {
  const { values, board, leastOdds, isAllowed } = search;
  let chosen = start;
  const stood: Chosen<C>[][] = [];
  // Fitted together, a newcomer can shrink to nothing or push out another that comes back next: then it would never end.
  while (chosen.length < MOST_CAUSES && !stood.some((before) => areSameChoices(before, chosen))) {
    stood.push(chosen);
    const next = board.best(remainder(values, chosen), keysOf(chosen), isAllowed);
    if (next === undefined || next.score < leastOdds) break;
    const joined = refit(values, [...chosen, { choice: next.choice, size: next.size }]);
    chosen = exchange(search, joined);
  }
  return chosen;
}

function areSameChoices(a: readonly Chosen<Choice>[], b: readonly Chosen<Choice>[]): boolean {
  return a.length === b.length && a.every(({ choice }) => b.some((other) => other.choice === choice));
}

/** The posterior odds of all chosen ones together against none, in logarithms. */
function totalOf<C extends Choice>(values: Float64Array, chosen: readonly Chosen<C>[]): number {
  const rest = remainder(values, chosen);
  const explained = (squares(values) - squares(rest)) / 2;
  return chosen.reduce((total, entry) => {
    const { vector } = entry.choice;
    const others = remainder(values, chosen, entry);
    const { size, score } = scoreOf(others, entry.choice);
    const gained = size * dot(others, vector) - (size * size * vector.length2) / 2;
    return total + score - gained;
  }, explained);
}

function squares(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value * value, 0);
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

function keysOf<C extends Choice>(chosen: readonly Chosen<C>[], but?: Chosen<C>): Set<string> {
  return new Set(chosen.filter((entry) => entry !== but).map(({ choice }) => choice.key));
}

/**
 * Exchanges chosen ones for others that explain their part better, once through those that the newest
 * one touches.
 */
function exchange<C extends Choice>(
  { values, board, isAllowed }: Search<C>,
  chosen: Chosen<C>[],
): Chosen<C>[] {
  let current = chosen;
  const newest = new Set(chosen.at(-1)?.choice.vector.at);
  for (let slot = 0; slot < current.length; slot++) {
    const entry = current[slot];
    if (entry === undefined || !entry.choice.vector.at.some((row) => newest.has(row))) continue;
    const rest = remainder(values, current, entry);
    const better = board.best(rest, keysOf(current, entry), isAllowed);
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
  if (chosen.length < 2 || chosen.length > MOST_JOINT) return undefined;
  const rows = [...new Set(chosen.flatMap(({ choice }) => [...choice.vector.at]))];
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
