/** One point of an EWMA chart, with the half-width of its limits. */
export type EwmaPoint = { value: number; halfWidth: number; isOut: boolean };

/**
 * Exponentially weighted moving average of a series, and its control limits (NIST/SEMATECH e-Handbook 6.3.2.4).
 *
 * EWMAₜ = λ·xₜ + (1 − λ)·EWMAₜ₋₁ from the target on. The limits widen from the first point to their steady
 * width k·s·√(λ/(2 − λ)). λ 0.3, target 50, first value 52.0 → 50.6.
 * Throws RangeError unless 0 < λ ≤ 1.
 */
export function ewma(
  values: readonly number[],
  { lambda, target, sd, width }: { lambda: number; target: number; sd: number; width: number },
): EwmaPoint[] {
  if (!(lambda > 0 && lambda <= 1)) throw new RangeError(`λ must lie in (0, 1]; it is ${lambda}.`);
  let value = target;
  return values.map((x, index) => {
    value = lambda * x + (1 - lambda) * value;
    const settled = 1 - (1 - lambda) ** (2 * (index + 1));
    const halfWidth = width * sd * Math.sqrt((lambda / (2 - lambda)) * settled);
    return { value, halfWidth, isOut: Math.abs(value - target) > halfWidth };
  });
}

/** One point of a CUSUM chart: what has added up above and below the target. */
export type CusumPoint = { high: number; low: number };

/**
 * Tabular CUSUM of a series (NIST/SEMATECH e-Handbook 6.3.2.3).
 *
 * high = max(0, high + x − target − k), low = max(0, low + target − k − x), both from 0. `slack` is k, in the
 * units of the data. Target 325, k 0.3175: 325.35 after a value below → high 0.0325.
 */
export function cusum(
  values: readonly number[],
  { target, slack }: { target: number; slack: number },
): CusumPoint[] {
  let high = 0;
  let low = 0;
  return values.map((x) => {
    high = Math.max(0, high + x - target - slack);
    low = Math.max(0, low + target - slack - x);
    return { high, low };
  });
}

/** A CUSUM that has crossed its limit: which way, where it did first, and where what it added up began. */
export type CusumSignal = { direction: "high" | "low"; began: number; crossed: number };

/**
 * The run of the CUSUM that is beyond `limit` at the last point; undefined when it is not.
 *
 * What it adds up began after the side last stood at 0, the usual estimate of when a shift took place.
 */
export function cusumSignal(points: readonly CusumPoint[], limit: number): CusumSignal | undefined {
  const last = points.at(-1);
  if (last === undefined || Math.max(last.high, last.low) <= limit) return undefined;
  const direction = last.high >= last.low ? "high" : "low";
  const began = points.findLastIndex((point) => point[direction] === 0) + 1;
  const crossed = points.findIndex((point, index) => index >= began && point[direction] > limit);
  return { direction, began, crossed };
}

/**
 * Where a steady shift away from 0 that lasts to the end began, by maximum likelihood.
 *
 * Of all starts the one with the largest (sum to the end)² ÷ (values to the end), on the given side.
 * [0, 0, 2, 2], "high" → 2.
 */
export function shiftBegan(values: readonly number[], direction: "high" | "low"): number {
  let sum = 0;
  let best = { at: Math.max(0, values.length - 1), gain: 0 };
  for (let at = values.length - 1; at >= 0; at--) {
    sum += (direction === "high" ? 1 : -1) * (values[at] ?? 0);
    const gain = sum > 0 ? sum ** 2 / (values.length - at) : 0;
    if (gain > best.gain) best = { at, gain };
  }
  return best.at;
}
