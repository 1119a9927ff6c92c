import { OutOfRangeError } from "#engine/measure/range.ts";
import {
  densityByMassFraction,
  ETHANOL_G_PER_ML,
  massFraction,
  spiritDensity,
} from "#engine/measure/spirit-density.ts";
import { sucroseDensity, waterDensity } from "#engine/measure/sucrose.ts";

/** One liquid of a blend, measured at 20 °C. */
export type BlendPart = {
  volumeMl: number;
  /** % vol at 20 °C. */
  abvPct?: number;
  /** Sugar as % of the weight. */
  brix?: number;
  /** Needed where a part has both strength and sugar: no formula covers a liqueur. */
  densityGPerMl?: number | undefined;
};

export type Blend = {
  volumeMl: number;
  weightG: number;
  abvPct: number;
  brix: number;
  /** How much less it fills than its parts did. */
  contractionMl: number;
  /** True where strength and sugar meet: the contraction is then an approximation, good to about 0.5 %. */
  isApproximate: boolean;
};

/**
 * Volume, strength and sugar of liquids poured together at 20 °C, water of dilution among them.
 *
 * Weights add, volumes do not: ethanol and water by OIML R 22, sugar and water by ICUMSA SPS-4. Sugar in a blend with
 * strength is taken to fill what it fills in plain water, an approximation of ours. Throws OutOfRangeError when
 * nothing is blended or a part with strength and sugar states no density.
 * 500 ml ethanol + 500 ml water → 964.6 ml of 51.83 % vol.
 */
export function blend(parts: readonly BlendPart[]): Blend {
  const contents = parts.map(contentOf);
  const total = (of: keyof Content) => contents.reduce((sum, content) => sum + content[of], 0);
  const [ethanolG, sugarG, waterG] = [total("ethanolG"), total("sugarG"), total("waterG")];
  const weightG = ethanolG + sugarG + waterG;
  if (weightG <= 0) throw new OutOfRangeError("A blend needs at least one part with a volume.");
  const volumeMl = sugarFreeMl({ ethanolG, waterG }) + sugarMl({ sugarG, waterG });
  return {
    volumeMl,
    weightG,
    abvPct: (100 * ethanolG) / ETHANOL_G_PER_ML / volumeMl,
    brix: (100 * sugarG) / weightG,
    contractionMl: parts.reduce((sum, part) => sum + part.volumeMl, 0) - volumeMl,
    isApproximate: ethanolG > 0 && sugarG > 0,
  };
}

/**
 * Water to bring a spirit without sugar down to a strength, and the volume it then fills at 20 °C; OIML R 22.
 *
 * Throws OutOfRangeError unless the wanted strength is above 0 and no more than the spirit's.
 * 1000 ml of 60 % vol to 40 → 513 g water, 1500 ml.
 */
export function waterToReach(spirit: { volumeMl: number; abvPct: number; wantedAbvPct: number }): {
  waterG: number;
  volumeMl: number;
} {
  const { volumeMl, abvPct, wantedAbvPct } = spirit;
  if (!(wantedAbvPct > 0 && wantedAbvPct <= abvPct)) {
    throw new OutOfRangeError(`Water brings ${abvPct} % vol to less, not to ${wantedAbvPct} % vol.`);
  }
  const weightG = volumeMl * spiritDensity({ abvPct });
  const finalG = (weightG * massFraction({ abvPct })) / massFraction({ abvPct: wantedAbvPct });
  return { waterG: finalG - weightG, volumeMl: finalG / spiritDensity({ abvPct: wantedAbvPct }) };
}

type Content = { ethanolG: number; sugarG: number; waterG: number };

function contentOf(part: BlendPart): Content {
  const { volumeMl, abvPct = 0, brix = 0 } = part;
  const weightG = volumeMl * (part.densityGPerMl ?? partDensity({ abvPct, brix }));
  const ethanolG = (volumeMl * abvPct * ETHANOL_G_PER_ML) / 100;
  const sugarG = (weightG * brix) / 100;
  const waterG = weightG - ethanolG - sugarG;
  // Rounding of a stated density may leave a hair less than nothing.
  if (waterG < -0.01 * weightG || volumeMl < 0) {
    throw new OutOfRangeError(
      `${volumeMl} ml of ${abvPct} % vol and ${brix} °Bx cannot weigh ${weightG.toFixed(1)} g; measure its density again.`,
    );
  }
  return { ethanolG, sugarG, waterG: Math.max(0, waterG) };
}

function partDensity({ abvPct, brix }: { abvPct: number; brix: number }): number {
  if (brix === 0) return spiritDensity({ abvPct });
  if (abvPct === 0) return sucroseDensity({ brix });
  throw new OutOfRangeError(
    `A part of ${abvPct} % vol with sugar (${brix} °Bx) needs its density: weigh a full and an empty bottle.`,
  );
}

function sugarFreeMl({ ethanolG, waterG }: { ethanolG: number; waterG: number }): number {
  const weightG = ethanolG + waterG;
  return weightG === 0 ? 0 : weightG / densityByMassFraction({ massFraction: ethanolG / weightG });
}

/** What sugar adds to the volume of the water that it is dissolved in. */
function sugarMl({ sugarG, waterG }: { sugarG: number; waterG: number }): number {
  if (sugarG === 0) return 0;
  // Stronger than a syrup can be where a liqueur has little water: the last ml per gram of the tables is kept.
  const brix = Math.min(85, (100 * sugarG) / (sugarG + waterG));
  const share = brix / 100;
  return (sugarG * (1 / sucroseDensity({ brix }) - (1 - share) / waterDensity())) / share;
}
