import type { SpecLine } from "#engine/specs/spec.ts";
import { plainNumber } from "../prep/amounts.ts";
import { say } from "../texts/say.ts";

/** The amount of a line as people write it: 0.75 oz → "3/4 oz"; 2 dash → "2 dashes"; a top-up → "top". */
export function measureWords({ amount, unit }: Pick<SpecLine, "amount" | "unit">): string {
  if (amount === null) return say("specs.top");
  const number = fractionWords(amount);
  if (unit === "each" || unit === "piece") return number;
  // Half a dash is one: what is not more than one has no plural.
  return say("specs.measure", { amount: number, unit, count: amount > 1 ? 2 : 1 });
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
  if (rest < 1e-9 || fraction === undefined || whole >= 10) return plainNumber(amount);
  return whole === 0 ? fraction : `${whole} ${fraction}`;
}

/** Any one of some items: "dry gin or vodka". */
export function eitherOf(items: readonly string[]): string {
  return items.join(` ${say("specs.or")} `);
}
