import { WEEKDAYS } from "#engine/time.ts";

/** One drink (or item sold straight) over the open days, and the days on which it could be had. */
export type Sold = {
  what: string;
  serves: Float64Array;
  /** From this day on and before that one: positions among the open days. */
  start: number;
  end: number;
  /** Share of a day's serves expected before any was sold, and how many days that is worth. */
  prior: { share: number; days: number } | null;
};

/** What share of the guests' serves each drink has. Weights count against the drinks on the menu that day. */
export type Mix = {
  weights: number[];
  /** By drink, then weekday: how much more (> 1) or less it is asked for than on other weekdays. */
  weekdayFactors: number[][];
};

export type MixDays = {
  /** Serves of all drinks on each open day. */
  totals: Float64Array;
  /** How much each day still counts, 0–1. */
  recency: Float64Array;
  /** Monday 0 … Sunday 6. */
  weekdays: readonly number[];
};

const ROUNDS = 20;

/** Weekday habits of a drink are read from half a year; before, the menu and its season were others. */
const WEEKDAY_HABIT_DAYS = 156;

/**
 * Shares of the drinks in what is sold, with a menu that changes: a guest picks one of the drinks on the
 * menu with chance in proportion to its weight (Luce's choice model), so that when one leaves the others
 * take its guests. Weights by the MM algorithm of Hunter 2004 ("MM algorithms for generalized
 * Bradley–Terry models"); weekday factors drawn to 1 by as much as chance would scatter them.
 */
export function fitMix(drinks: readonly Sold[], days: MixDays): Mix {
  const weights = shares(drinks, days);
  return { weights, weekdayFactors: weekdayFactors(drinks, days, weights) };
}

function shares(drinks: readonly Sold[], { totals, recency }: MixDays): number[] {
  const averageTotal = weightedMean(totals, recency);
  const asked = drinks.map(({ serves, start, end, prior }) => {
    let sum = prior === null ? 0 : prior.days * averageTotal * prior.share;
    for (let day = start; day < end; day += 1) sum += (recency[day] ?? 0) * (serves[day] ?? 0);
    return sum;
  });
  let weights = drinks.map(() => 1 / Math.max(1, drinks.length));
  for (let round = 0; round < ROUNDS; round += 1) {
    const onMenu = weightOnMenu(drinks, weights, totals.length);
    const current = drinks.reduce(
      (sum, { end }, k) => sum + (end === totals.length ? (weights[k] ?? 0) : 0),
      0,
    );
    const chances = runningSum(
      totals.map((total, day) => ((recency[day] ?? 0) * total) / (onMenu[day] || 1)),
    );
    const next = drinks.map(({ start, end, prior }, k) => {
      const had = (chances[end] ?? 0) - (chances[start] ?? 0);
      const believed = prior === null ? 0 : (prior.days * averageTotal) / (current || 1);
      return had + believed > 0 ? (asked[k] ?? 0) / (had + believed) : 0;
    });
    const moved = next.reduce((sum, weight, k) => sum + Math.abs(weight - (weights[k] ?? 0)), 0);
    weights = next;
    if (moved < 1e-7) break;
  }
  return weights;
}

/** Sum of the weights of what could be had, day by day. */
function weightOnMenu(drinks: readonly Sold[], weights: readonly number[], days: number): Float64Array {
  const steps = new Float64Array(days + 1);
  drinks.forEach(({ start, end }, k) => {
    steps[start] = (steps[start] ?? 0) + (weights[k] ?? 0);
    steps[end] = (steps[end] ?? 0) - (weights[k] ?? 0);
  });
  return runningSum(steps).subarray(1, days + 1);
}

/** The sums before each position: [a, b] → [0, a, a + b]. */
function runningSum(values: Float64Array): Float64Array {
  const sums = new Float64Array(values.length + 1);
  values.forEach((value, day) => {
    sums[day + 1] = (sums[day] ?? 0) + value;
  });
  return sums;
}

function weightedMean(values: Float64Array, weights: Float64Array): number {
  let [sum, weight] = [0, 0];
  values.forEach((value, day) => {
    sum += value * (weights[day] ?? 0);
    weight += weights[day] ?? 0;
  });
  return weight > 0 ? sum / weight : 0;
}

/** Sold and expected serves of one drink on one weekday. */
type Habit = { sold: number; expected: number };

function weekdayFactors(drinks: readonly Sold[], days: MixDays, weights: readonly number[]): number[][] {
  const onMenu = weightOnMenu(drinks, weights, days.totals.length);
  const habits = drinks.map((drink, k) => habitsOf(drink, days, weights[k] ?? 0, onMenu));
  const pooled = excessOf(habits.flat());
  return habits.map((own) => {
    // A brunch drink has habits of its own even where the others have none.
    const excess = (excessOf(own) + pooled) / 2;
    if (excess <= 0) return own.map(() => 1);
    const pull = 1 / excess;
    return own.map(({ sold, expected }) => (sold + pull) / (expected + pull));
  });
}

function habitsOf(drink: Sold, days: MixDays, weight: number, onMenu: Float64Array): Habit[] {
  const habits: Habit[] = WEEKDAYS.map(() => ({ sold: 0, expected: 0 }));
  const from = Math.max(drink.start, days.totals.length - WEEKDAY_HABIT_DAYS);
  for (let day = from; day < drink.end; day += 1) {
    const habit = habits[days.weekdays[day] ?? 0];
    if (habit === undefined) continue;
    habit.sold += drink.serves[day] ?? 0;
    habit.expected += ((days.totals[day] ?? 0) * weight) / (onMenu[day] || 1);
  }
  // Recent weeks weigh more in the weights than here: habits compare weekdays, not months.
  const sold = habits.reduce((sum, habit) => sum + habit.sold, 0);
  const expected = habits.reduce((sum, habit) => sum + habit.expected, 0);
  const scale = expected > 0 ? sold / expected : 1;
  return habits.map((habit) => ({ sold: habit.sold, expected: habit.expected * scale }));
}

/** Relative variance of the habits beyond what the chance of single serves gives them. */
function excessOf(habits: readonly Habit[]): number {
  let [excess, squares] = [0, 0];
  for (const { sold, expected } of habits) {
    excess += (sold - expected) ** 2 - expected;
    squares += expected * expected;
  }
  return squares > 0 ? Math.max(0, excess / squares) : 0;
}
