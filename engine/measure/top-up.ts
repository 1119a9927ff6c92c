import { iceDilution } from "#engine/measure/dilution.ts";
import { rootSumOfSquares } from "#engine/measure/uncertainty.ts";

export type TopUpIce = "none" | "cubed" | "crushed" | "large";
export type TopUpTechnique = "built" | "shaken" | "stirred" | "blended" | "thrown";

/** A share and its standard deviation. */
type Share = { mean: number; sd: number };

/** Common practice: a glass is filled to a finger below its rim. */
const FILLED: Share = { mean: 0.9, sd: 0.04 };

/** Common practice: the share of the glass that ice takes up below the surface. */
const ICE_SHARE: Record<TopUpIce, Share> = {
  none: { mean: 0, sd: 0 },
  cubed: { mean: 0.4, sd: 0.08 },
  crushed: { mean: 0.5, sd: 0.1 },
  large: { mean: 0.3, sd: 0.08 },
};

/** Anything from no ice to a glass of cubes. */
const ICE_NOT_KNOWN: Share = { mean: 0.25, sd: 0.2 };

/** Common practice, as a share of the liquid; shaken and stirred follow the published fits instead. */
const MELT: Record<"built" | "blended" | "thrown", Share> = {
  built: { mean: 0.1, sd: 0.06 },
  thrown: { mean: 0.25, sd: 0.1 },
  blended: { mean: 0.9, sd: 0.25 },
};

/** Where the strength is not known: the middle of the published fits. */
const USUAL_ABV_PCT = 20;

export type TopUp = {
  volumeMl: number;
  /** Standard deviation of `volumeMl`: wide, since nobody measured it. */
  sd: number;
  /** False when the liquid alone fills the glass: then the glass, or the spec, is likely wrong. */
  fits: boolean;
};

/**
 * An estimate of what "top with soda" pours: the filled glass, less the ice, less the liquid already in it and what
 * ice melted into that. Undefined when the glass is not known.
 *
 * `liquidMl` is before dilution, `abv` its % vol. Sources: common practice; `iceDilution` for shaken and stirred.
 * A 350 ml glass, cubed, built, 50 ml → 120 ± 31 ml.
 */
export function topUpMl(drink: {
  glassMl: number | null;
  ice: TopUpIce | null;
  technique: TopUpTechnique | null;
  liquidMl: number;
  abv?: number | null;
}): TopUp | undefined {
  const { glassMl, ice, technique, liquidMl, abv = null } = drink;
  if (glassMl === null) return undefined;
  const iceShare = ice === null ? ICE_NOT_KNOWN : ICE_SHARE[ice];
  const melt = meltShare(technique, abv);
  const roomMl = glassMl * (FILLED.mean - iceShare.mean) - liquidMl * (1 + melt.mean);
  const sd = rootSumOfSquares([glassMl * FILLED.sd, glassMl * iceShare.sd, liquidMl * melt.sd]);
  return { volumeMl: Math.max(0, roomMl), sd, fits: roomMl >= 0 };
}

function meltShare(technique: TopUpTechnique | null, abv: number | null): Share {
  if (technique === null) return { mean: 0.25, sd: 0.2 };
  if (technique !== "shaken" && technique !== "stirred") return MELT[technique];
  // Held to the range of the fits: an estimate may be rough, and a weak or strong drink still has a top.
  const abvPct = Math.min(35, Math.max(10, abv ?? USUAL_ABV_PCT));
  return { mean: iceDilution({ technique, abvPct }), sd: abv === null ? 0.12 : 0.08 };
}
