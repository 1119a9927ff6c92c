import { requireWithin } from "#engine/measure/range.ts";

/**
 * Water that ice adds to a drink, as a share of the volume before it: fits by Dave Arnold, Liquid Intelligence (2014).
 *
 * `abvPct` is the strength before dilution; valid for about 10–35 % vol, fast stirring for 15 s or shaking for 10 s
 * with 120 g of 1/4-inch cubes. Throws OutOfRangeError outside. The shaken square term is negative; copies that print
 * it positive give 66 % at 22 % vol. Shaken at 20 % vol → 0.489; stirred at 30 % vol → 0.410.
 */
export function iceDilution({
  technique,
  abvPct,
}: {
  technique: "shaken" | "stirred";
  abvPct: number;
}): number {
  requireWithin(abvPct, {
    what: "The strength in % vol of a drink to be shaken or stirred",
    low: 10,
    high: 35,
  });
  const a = abvPct / 100;
  return technique === "shaken" ? -1.567 * a * a + 1.742 * a + 0.203 : -1.21 * a * a + 1.246 * a + 0.145;
}

/** Strength after water was added, `dilution` being its share of the volume before. 20 % vol, 0.489 → 13.4. */
export function dilutedAbvPct({ abvPct, dilution }: { abvPct: number; dilution: number }): number {
  return abvPct / (1 + dilution);
}
