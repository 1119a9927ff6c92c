import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { itemNamed } from "#engine/catalogue.ts";
import type { Effect } from "#engine/variance/causes/candidate.ts";
import type { ItemScene, Scene } from "#engine/variance/causes/scene.ts";
import type { ItemPeriod } from "#engine/variance/period.ts";

/** A vector over all items and their three windows, by its entries that are not 0. */
export type Sparse = { at: number[]; values: number[]; length2: number };

/**
 * What is unexplained, in standard uncertainties that are independent of each other.
 *
 * Two windows of one item share a count, and are off by it in opposite ways; each item's three numbers are
 * multiplied by the inverse of the Cholesky factor of their covariance (generalised least squares), after
 * which plain sums of squares are likelihoods.
 */
export class Residuals {
  /** Three entries an item: before, now, after. */
  readonly values: Float64Array;
  /** By how much the stated uncertainties were widened to fit most items. */
  readonly widened: number;
  readonly #rowOf = new Map<string, number>();
  readonly #inverses: number[][] = [];

  constructor(scene: Scene) {
    this.widened = widening(scene);
    this.values = new Float64Array(scene.items.size * WINDOWS);
    for (const [item, windows] of scene.items) {
      const row = this.#rowOf.size;
      this.#rowOf.set(item, row);
      this.#inverses.push(inverseFactor(covariance(scene, windows, this.widened)));
      const { before, now, after } = windows;
      const raw = {
        item,
        before: before?.unexplained ?? 0,
        now: now.unexplained,
        after: after?.unexplained ?? 0,
      };
      this.#whiten(row, raw).forEach((value, offset) => {
        this.values[row * WINDOWS + offset] = value;
      });
    }
  }

  /** A signature in the same measure. */
  whiten(effects: readonly Effect[]): Sparse {
    const at: number[] = [];
    const values: number[] = [];
    let length2 = 0;
    for (const effect of effects) {
      const row = this.#rowOf.get(effect.item);
      if (row === undefined) continue;
      const whitened = this.#whiten(row, effect);
      for (let offset = 0; offset < WINDOWS; offset++) {
        const value = whitened[offset] ?? 0;
        // What falls into a window without a number says nothing.
        if (Math.abs(value) < LEAST_ENTRY) continue;
        at.push(row * WINDOWS + offset);
        values.push(value);
        length2 += value * value;
      }
    }
    return { at, values, length2 };
  }

  #whiten(row: number, { before, now, after }: Effect): number[] {
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = this.#inverses[row] ?? [];
    return [a * before, b * before + c * now, d * before + e * now + f * after];
  }
}

const WINDOWS = 3;
/** In standard uncertainties, of one unit of a signature. */
const LEAST_ENTRY = 1e-7;

/** A window without a number says nothing: it is given a variance beyond all others. */
const UNKNOWN_VARIANCE = 1e18;

/** What the model itself may be off by, beside the stated uncertainties: half a percent of the expected use. */
const MODEL_SHARE = 0.005;

/** Covariance of an item's three windows; two neighbours share the count between them, with opposite signs. */
function covariance(scene: Scene, { before, now, after }: ItemScene, widened: number): Matrix {
  const floor = floorVariance(scene, now);
  const own = (period: ItemPeriod | undefined) =>
    period === undefined
      ? UNKNOWN_VARIANCE
      : widened ** 2 * (period.sd ** 2 + floor + (MODEL_SHARE * period.expected.amount) ** 2);
  const shared = (holding: { variance: number }) => -(widened ** 2) * holding.variance;
  const first = before === undefined ? 0 : shared(now.opening);
  const second = after === undefined ? 0 : shared(now.closing);
  return new Matrix([
    [own(before), first, 0],
    [first, own(now), second],
    [0, second, own(after)],
  ]);
}

/** Nothing is known better than to a piece, or to a few ml or g. */
function floorVariance(scene: Scene, { item }: ItemPeriod): number {
  return { each: 0.25, ml: 9, g: 9 }[itemNamed(scene.facts.catalogue, item).base];
}

/** The six entries of the inverse of the lower Cholesky factor, row by row. */
function inverseFactor(matrix: Matrix): number[] {
  const lower = new CholeskyDecomposition(matrix).lowerTriangularMatrix;
  const [a, b, c, d, e, f] = [
    lower.get(0, 0),
    lower.get(1, 0),
    lower.get(1, 1),
    lower.get(2, 0),
    lower.get(2, 1),
    lower.get(2, 2),
  ];
  const secondFirst = -b / (a * c);
  return [1 / a, secondFirst, 1 / c, -(d / a + e * secondFirst) / f, -e / (c * f), 1 / f];
}

/** The most that uncertainties are widened: beyond it, the stated ones are wrong and a person must look. */
const WIDEST = 2;

/**
 * The robust spread of all standardised residuals (median absolute ÷ 0.6745), when it is more than 1: a venue
 * whose figures are a little too good should not get a list of causes for it.
 */
function widening(scene: Scene): number {
  const sizes = [...scene.items.values()]
    .flatMap(({ before, now, after }) => [before, now, after])
    .flatMap((period) =>
      period === undefined
        ? []
        : [Math.abs(period.unexplained) / Math.sqrt(period.sd ** 2 + floorVariance(scene, period))],
    )
    .sort((a, b) => a - b);
  const median = sizes[Math.floor(sizes.length / 2)] ?? 0;
  return Math.min(WIDEST, Math.max(1, median / 0.6745));
}
