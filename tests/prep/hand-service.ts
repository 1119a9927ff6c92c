import type { SaleGroup } from "#engine/sales/tally.ts";
import { aDrink, specLines } from "#tests/support/hand-bar.ts";
import { prepBook } from "./hand-prep.ts";

/** The kitchen with two drinks: a gimlet of 30 ml cordial and 20 ml juice, and a highball with a wheel and a peel. */
export function bookWithDrinks() {
  const book = prepBook();
  book.drinks.push(aDrink("Gimlet"), aDrink("Highball"));
  book.specs.push(
    ...specLines("Gimlet", "2026-01-01", ["30 ml Lime cordial", "20 ml Lime juice"]),
    ...specLines("Highball", "2026-01-01", ["1 each Lime wheel", "1 each Lime peel"]),
  );
  return book;
}

export function soldOn(businessDate: string, ringName: string, quantity: number): SaleGroup {
  return { businessDate, at: null, timed: true, ringName, modifiers: "", quantity, netMinor: 0 };
}

/** Numbers from 0 to 1 that look random and are the same every time (Lehmer, multiplier 48271 modulo 2³¹ − 1). */
export function chances(seed: number) {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/** Poisson by counting exponential waits (Knuth). */
export function poisson(mean: number, chance: () => number) {
  let count = 0;
  for (let left = Math.exp(-mean), product = chance(); product > left; product *= chance()) count += 1;
  return count;
}
