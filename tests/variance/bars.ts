import type { Simulation } from "#tests/simulate/bar.ts";
import { drawnBar } from "#tests/simulate/drawn-bar.ts";
import { HARBOUR_LANTERN } from "#tests/simulate/lantern/bar.ts";
import { SMALL_BAR } from "#tests/simulate/small-bar.ts";
import { type BarStyle, HOTEL, PUB, SCALES, TIKI } from "#tests/simulate/styles.ts";
import { variedCatalogue } from "#tests/simulate/vary.ts";

/** The bars that causes are measured on, each another one for every seed, in the week the trouble is planted in. */
export const BARS = {
  small: barOf(4, (seed) => variedCatalogue({ catalogue: SMALL_BAR, seed })),
  lantern: barOf(6, (seed) => variedCatalogue({ catalogue: HARBOUR_LANTERN, seed })),
  pub: barOf(4, drawn(PUB)),
  tiki: barOf(4, drawn(TIKI)),
  scales: barOf(4, drawn(SCALES)),
  hotel: barOf(4, drawn(HOTEL)),
};
export type BarName = keyof typeof BARS;

type Measured = { week: number; simulation: Omit<Simulation, "faults"> };

function barOf(week: number, catalogue: (seed: number) => NonNullable<Simulation["catalogue"]>) {
  // A third of them has no later count, which is when one learns of it.
  return (seed: number): Measured => ({
    week,
    simulation: { seed, weeks: week + (seed % 3 === 0 ? 0 : 1), catalogue: catalogue(seed) },
  });
}

function drawn(style: BarStyle) {
  return (seed: number) => drawnBar({ style, seed });
}
