import { REFERENCE_C, spiritDensity } from "#engine/measure/spirit-density.ts";
import { sucroseDensity } from "#engine/measure/sucrose.ts";
import { foldName } from "#engine/name.ts";

/** What must be known of a liquid to say how it shrinks in the cold. */
export type Shrinking = { category: string; abv: number | null; brix: number | null };

/**
 * How much of a liquid, as it measures at 20 °C, one ml of it is that is seen at another temperature: ρ(T) ÷ ρ(20 °C).
 *
 * Stock is kept at 20 °C, to which % vol and the size on a label refer. A level judged by eye sees the cold, shrunken
 * volume, so it is multiplied by this; a weight needs nothing of the kind: cold takes no mass away, and the net weight
 * ÷ the density at 20 °C is the volume at 20 °C wherever the bottle stood.
 * Known for category "spirit" from its strength (OIML R 22, −20 to 40 °C) and for sugar syrups without strength from
 * °Brix (ICUMSA SPS-4, 0 to 80 °C); no formula tells how a liqueur or a wine shrinks, so for them it is 1.
 * Throws OutOfRangeError outside of those temperatures, and where the spirit would be ice or slush.
 * A spirit of 40 % vol at −18 °C → 1.0240: half a bottle of 700 ml that stands in the freezer is 358 ml, not 350.
 */
export function levelAt20(liquid: Shrinking, temperatureC: number | undefined): number {
  const { category, abv, brix } = liquid;
  if (temperatureC === undefined || temperatureC === REFERENCE_C) return 1;
  if (abv !== null && foldName(category) === "spirit") {
    return spiritDensity({ abvPct: abv, temperatureC }) / spiritDensity({ abvPct: abv });
  }
  if (brix !== null && brix > 0 && !(abv !== null && abv > 0)) {
    return sucroseDensity({ brix, temperatureC }) / sucroseDensity({ brix });
  }
  return 1;
}
