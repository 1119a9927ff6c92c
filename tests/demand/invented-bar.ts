import { type Facts, factsOf } from "#engine/facts.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { addDays, type BusinessDate } from "#engine/time.ts";
import { type Random, randomStream } from "../simulate/random.ts";
import { aDrink, anEmptyBook } from "../support/hand-bar.ts";
import { soldOn } from "./sold-days.ts";

/** A kind of bar: how much it sells, when it is open, where it is heading, and how its nights scatter. */
export type Kind = {
  drinks: number;
  perDay: number;
  weeks: number;
  /** Weekdays closed, Monday 0. */
  closed: readonly number[];
  /** Sold at the end for each drink sold at the start. */
  growth: number;
  /** A night's busyness has relative spread 1 ÷ √this, a drink's share of it 1 ÷ √that. */
  nightShape: number;
  tasteShape: number;
  /** Most of one drink that a table orders at once. */
  round: number;
  /** Chance that a night is a hired or a rained-off one that nobody wrote down. */
  oddNights: number;
  /** Share of the drinks that come or go within the weeks, without menu dates. */
  changing: number;
};

export const USUAL: Kind = {
  drinks: 30,
  perDay: 120,
  weeks: 26,
  closed: [],
  growth: 1,
  nightShape: 40,
  tasteShape: 25,
  round: 2,
  oddNights: 0.01,
  changing: 0.1,
};

export const FIRST: BusinessDate = "2026-01-05";

/**
 * The sales of an invented bar by a law that the forecast knows nothing of: tables that order rounds, a trend that
 * bends, odd nights, drinks that come and go. The same kind and seed give the same sales.
 */
export function inventedBar(
  kind: Kind,
  seed: number,
): { facts: Facts; sales: SaleGroup[]; after: BusinessDate } {
  const random = randomStream(seed, "invented bar");
  const days = kind.weeks * 7;
  const weekday = Array.from({ length: 7 }, (_, day) => (day < 4 ? 0.5 : 1) + random.uniform());
  const drinks = Array.from({ length: kind.drinks }, (_, index) => drinkOf(kind, index, days, random));
  const sales: SaleGroup[] = [];
  let drift = 1;
  for (let day = 0; day < days; day += 1) {
    if (day % 7 === 0) drift *= Math.exp(0.02 * random.normal());
    if (kind.closed.includes(day % 7)) continue;
    const trend = kind.growth ** (day / days) * (1 + 0.1 * Math.sin((day / days) * Math.PI * 2));
    const odd = random.chance(kind.oddNights) ? random.pick([0.25, 2.5]) : 1;
    const guests =
      kind.perDay * (weekday[day % 7] ?? 1) * drift * trend * odd * random.gamma(kind.nightShape);
    const menu = drinks
      .filter(({ from, until }) => from <= day && day < until)
      .map(({ name, weight, habit }) => ({
        name,
        weight: weight * (habit[day % 7] ?? 1) * random.gamma(kind.tasteShape),
      }));
    const total = menu.reduce((sum, { weight }) => sum + weight, 0);
    for (const { name, weight } of menu) {
      const rounds = random.poisson((guests * weight) / total / ((1 + kind.round) / 2));
      let sold = 0;
      for (let round = 0; round < rounds; round += 1) sold += random.whole(1, kind.round);
      if (sold > 0) sales.push(soldOn(addDays(FIRST, day), name, sold));
    }
  }
  const book = { ...anEmptyBook(), drinks: drinks.map(({ name }) => aDrink(name, 1000)) };
  return { facts: factsOf(book), sales, after: addDays(FIRST, days) };
}

function drinkOf({ changing }: Kind, index: number, days: number, random: Random) {
  const changes = random.chance(changing);
  const at = Math.floor(days * (0.2 + 0.6 * random.uniform()));
  const comes = random.chance(0.5);
  return {
    name: `Drink ${index + 1}`,
    // A few sell most: the tenth sells a quarter of the first.
    weight: random.gamma(3) / (index + 3),
    habit: Array.from({ length: 7 }, () => random.gamma(60)),
    from: changes && comes ? at : 0,
    until: changes && !comes ? at : days,
  };
}
