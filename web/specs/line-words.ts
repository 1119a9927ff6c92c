import type { SpecLine } from "#engine/specs/spec.ts";

/** Units that are words take a plural, which abbreviations do not: "2 dashes", "2 oz". */
const PLURALS: Partial<Record<SpecLine["unit"], string>> = {
  dash: "dashes",
  drop: "drops",
  barspoon: "barspoons",
  splash: "splashes",
  cup: "cups",
};

/** The amount of a line as people write it: 0.75 oz → "3/4 oz"; 2 dash → "2 dashes"; a top-up → "top". */
export function measureWords({ amount, unit }: Pick<SpecLine, "amount" | "unit">): string {
  if (amount === null) return "top";
  const number = fractionWords(amount);
  if (unit === "each" || unit === "piece") return number;
  return `${number} ${amount > 1 ? (PLURALS[unit] ?? unit) : unit}`;
}

const FRACTIONS: readonly (readonly [number, string])[] = [
  [1 / 8, "1/8"],
  [1 / 4, "1/4"],
  [1 / 3, "1/3"],
  [3 / 8, "3/8"],
  [1 / 2, "1/2"],
  [5 / 8, "5/8"],
  [2 / 3, "2/3"],
  [3 / 4, "3/4"],
  [7 / 8, "7/8"],
];

/** 1.5 → "1 1/2"; 22.5 → "22.5", as nobody jiggers 22 1/2 ml. */
export function fractionWords(amount: number): string {
  const whole = Math.floor(amount);
  const rest = amount - whole;
  const fraction = FRACTIONS.find(([value]) => Math.abs(value - rest) < 0.004)?.[1];
  if (rest < 1e-9 || fraction === undefined || whole >= 10) return String(Number(amount.toFixed(4)));
  return whole === 0 ? fraction : `${whole} ${fraction}`;
}
