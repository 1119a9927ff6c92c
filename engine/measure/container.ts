import { OutOfRangeError, requireWithin } from "#engine/measure/range.ts";
import { propagate } from "#engine/measure/uncertainty.ts";

/** A volume found in an open container, with its standard deviation. */
export type OpenVolume = { volumeMl: number; sd: number };

/** Where the empty weight came from; the last is a wide guess. */
export type TareSource = "empty weight" | "full weight" | "usual for its size";

/** Weights of glass bottles by what they hold, ml and g; common practice. Real ones differ by a fifth either way. */
const USUAL_EMPTY_G: readonly (readonly [volumeMl: number, emptyG: number])[] = [
  [50, 60],
  [200, 220],
  [375, 330],
  [500, 420],
  [700, 500],
  [750, 520],
  [1000, 620],
  [1500, 850],
  [1750, 950],
];
export const USUAL_EMPTY_SPREAD = 0.2;

/** Common practice: bottles of one label differ in weight by about 1 %. */
const BOTTLE_SPREAD = 0.01;

/**
 * What is left in an open bottle or keg from its weight on the scale: (gross − empty) ÷ density.
 *
 * The empty weight is the one stated; else full weight − contents; else, for bottles up to 1750 ml, the one usual for
 * the size, with a wide standard deviation that says so. Uncertainty by JCGM 100; with the full weight alone it is
 * the missing part that is weighed. Kegs have no usual weight (no standard sets one): one of theirs must be stated.
 * Throws OutOfRangeError when the scale shows clearly less than an empty or more than a full container.
 * 1012 g gross, 520 g empty, 0.9505 g/ml → 517.6 ml.
 */
export function volumeByWeight(weighing: {
  grossG: number;
  densityGPerMl: number;
  container: { volumeMl: number; emptyG: number | null; fullG: number | null };
  scaleSdG: number;
}): OpenVolume & { tare: TareSource } {
  const { grossG, densityGPerMl, container, scaleSdG } = weighing;
  const { emptyG, sd: tareSd, source } = emptyWeight(container, densityGPerMl);
  const found = propagate(
    ([gross = 0, empty = 0]) => (gross - empty) / densityGPerMl,
    [
      { value: grossG, sd: scaleSdG },
      { value: emptyG, sd: tareSd },
    ],
  );
  const slackMl = Math.max(3 * found.sd, 0.02 * container.volumeMl);
  if (found.value < -slackMl || found.value > container.volumeMl + slackMl) {
    const fullG = emptyG + container.volumeMl * densityGPerMl;
    throw new OutOfRangeError(
      `${grossG} g is not a weight of this container: empty it weighs about ${Math.round(emptyG)} g, ` +
        `full ${Math.round(fullG)} g. Weigh it again, or check its empty weight and density.`,
    );
  }
  const volumeMl = Math.min(container.volumeMl, Math.max(0, found.value));
  return { volumeMl, sd: found.sd, tare: source };
}

/**
 * What is left in an open container from a level judged as a share of it, 0–1: a bottle, a keg, a box; as it measures at 20 °C.
 *
 * `readingSd` is of the share (see `DEFAULT_UNCERTAINTY`); an empty one is seen to be empty, and a full one to be full.
 * `atCold` is `levelAt20` of what is in it, where it stands in the cold: never more than the size, to which a bottle is
 * filled at 20 °C. 0.4 of 750 ml at 0.0289 → 300 ± 21.7 ml; 0.5 of 700 ml at −18 °C (1.024) → 358.4 ml.
 */
export function volumeByLevel(level: {
  share: number;
  volumeMl: number;
  readingSd: number;
  atCold?: number;
}): OpenVolume {
  const { share, volumeMl, readingSd, atCold = 1 } = level;
  requireWithin(share, { what: "The part left in an open container", low: 0, high: 1 });
  if (share === 0 || share === 1) return { volumeMl: share * volumeMl, sd: 0 };
  return { volumeMl: Math.min(volumeMl, share * volumeMl * atCold), sd: readingSd * volumeMl };
}

type EmptyWeight = { emptyG: number; sd: number; source: TareSource };

function emptyWeight(
  container: { volumeMl: number; emptyG: number | null; fullG: number | null },
  densityGPerMl: number,
): EmptyWeight {
  const { volumeMl, emptyG, fullG } = container;
  if (emptyG !== null) return { emptyG, sd: emptyG * BOTTLE_SPREAD, source: "empty weight" };
  if (fullG !== null) {
    const worked = fullG - volumeMl * densityGPerMl;
    if (worked > 0) return { emptyG: worked, sd: worked * BOTTLE_SPREAD, source: "full weight" };
    throw new OutOfRangeError(
      `A full container of ${volumeMl} ml cannot weigh ${fullG} g at ${densityGPerMl} g/ml; weigh a full one again.`,
    );
  }
  const usual = usualEmptyG(volumeMl);
  return { emptyG: usual, sd: usual * USUAL_EMPTY_SPREAD, source: "usual for its size" };
}

/**
 * The weight in g of an empty glass bottle that holds a volume, between the usual ones; common practice, ± 20 %.
 *
 * Throws OutOfRangeError outside of 50–1750 ml: kegs and tubs must be weighed or their stamp read. 700 ml → 500.
 */
export function usualEmptyG(volumeMl: number): number {
  const upTo = USUAL_EMPTY_G.findIndex(([size]) => size >= volumeMl);
  const upper = USUAL_EMPTY_G[upTo];
  const lower = USUAL_EMPTY_G[upTo - 1] ?? upper;
  if (upper === undefined || lower === undefined || volumeMl < 50) {
    throw new OutOfRangeError(
      `No usual empty weight is known for a container of ${volumeMl} ml: weigh an empty one, or read the stamp on it.`,
    );
  }
  const [[size0, weight0], [size1, weight1]] = [lower, upper];
  return size1 === size0 ? weight1 : weight0 + ((weight1 - weight0) * (volumeMl - size0)) / (size1 - size0);
}
