import { ETHANOL_G_PER_ML } from "#engine/measure/spirit-density.ts";
import { US_FLUID_OUNCE_ML } from "#engine/measure/unit-factor.ts";

/** Ethanol in a US standard drink: 0.6 US fl oz, which weighs 14 g (NIAAA). */
export const US_STANDARD_DRINK_ML = 0.6 * US_FLUID_OUNCE_ML;
/** Ethanol in a UK unit: 10 ml; the "8 g" beside it in print is rounded from 7.9. */
export const UK_UNIT_ML = 10;

export type Alcohol = { ethanolMl: number; ethanolG: number; usDrinks: number; ukUnits: number };

/**
 * How much alcohol a volume of ethanol is, in the measures that guidance to drinkers speaks in. For information only:
 * how much of it is too much is for the law, the doctor and the guest.
 *
 * Ethanol by OIML R 22, 0.7892 g/ml at 20 °C. 25 ml of 40 % = 10 ml → 7.9 g, 0.56 US standard drinks, 1 UK unit.
 */
export function alcoholOf(ethanolMl: number): Alcohol {
  return {
    ethanolMl,
    ethanolG: ethanolMl * ETHANOL_G_PER_ML,
    usDrinks: ethanolMl / US_STANDARD_DRINK_ML,
    ukUnits: ethanolMl / UK_UNIT_ML,
  };
}
