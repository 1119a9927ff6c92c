import { crystalCaution } from "#engine/measure/syrup.ts";
import type { Mixed } from "#engine/prep/weights.ts";

/** What a fridge is set to; the temperature up to which the US Food Code counts its seven days is 5 °C. */
const FRIDGE_C = 4;

/** A stated yield this far from what the weights give is more than rounding, as a share. */
const YIELD_OFF = 0.05;

/**
 * What the weights of a syrup say against the sheet: a yield that cannot be, or sugar that may come out in the fridge.
 *
 * `makeMl` is what the sheet says the batch gives. 1000 g sugar + 1000 g water said to give 2000 ml → one caution.
 */
export function syrupCautions({ mix, makeMl }: { mix: Mixed | undefined; makeMl: number | null }): string[] {
  if (mix === undefined) return [];
  const cautions: string[] = [];
  if (makeMl !== null && makeMl > 0 && Math.abs(mix.volumeMl / makeMl - 1) > YIELD_OFF) {
    cautions.push(
      `By weight these inputs come to ${Math.round(mix.volumeMl)} ml at 20 °C, the sheet says ${Math.round(makeMl)} ml: ` +
        "measure the batch and mend the yield, unless it is boiled down or strained.",
    );
  }
  const crystals = crystalCaution({ brix: mix.brix, keptAtC: FRIDGE_C });
  return crystals === undefined ? cautions : [...cautions, crystals];
}
