import type { BaseUnit, Measures, Unit } from "#engine/measure/units.ts";

// Exact: US gallon = 231 in³ and 1 in = 25.4 mm; UK gallon = 4.54609 l; lb = 0.45359237 kg (NIST HB 44 App. C).
export const US_FLUID_OUNCE_ML = 29.5735295625;
export const IMPERIAL_FLUID_OUNCE_ML = 28.4130625;
export const POUND_G = 453.59237;

/**
 * The base unit of a unit's dimension and how many of them one unit holds.
 *
 * `tsp`, `tbsp` and `cup` are the US customary measures (4.93, 14.79, 236.59 ml) whatever "oz" means.
 * 1 oz (us) → { base: "ml", factor: 29.5735295625 }; 1 lb → { base: "g", factor: 453.59237 }.
 */
export function unitFactor(unit: Unit, measures: Measures): { base: BaseUnit; factor: number } {
  switch (unit) {
    case "ml":
      return { base: "ml", factor: 1 };
    case "cl":
      return { base: "ml", factor: 10 };
    case "dl":
      return { base: "ml", factor: 100 };
    case "l":
      return { base: "ml", factor: 1000 };
    case "oz":
      return { base: "ml", factor: measures.oz === "us" ? US_FLUID_OUNCE_ML : IMPERIAL_FLUID_OUNCE_ML };
    case "tsp":
      return { base: "ml", factor: US_FLUID_OUNCE_ML / 6 };
    case "tbsp":
      return { base: "ml", factor: US_FLUID_OUNCE_ML / 2 };
    case "cup":
      return { base: "ml", factor: US_FLUID_OUNCE_ML * 8 };
    case "dash":
    case "barspoon":
    case "drop":
    case "splash":
      return { base: "ml", factor: measures.houseMl[unit] };
    case "g":
      return { base: "g", factor: 1 };
    case "kg":
      return { base: "g", factor: 1000 };
    case "lb":
      return { base: "g", factor: POUND_G };
    case "oz-wt":
      return { base: "g", factor: POUND_G / 16 };
    case "each":
    case "piece":
      return { base: "each", factor: 1 };
  }
}
