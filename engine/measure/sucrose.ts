import { bisect } from "#engine/measure/bisect.ts";
import { requireWithin } from "#engine/measure/range.ts";

// Rows by the power of x = (t − 20)/100, entries by the power of w from w¹ (ICUMSA SPS-4).
const ROWS = [
  [385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.289],
  [-46.272, -7.172, 1.1597, 5.1126, 17.5254],
  [59.7712, 7.2491, 12.363, -35.4791],
  [-47.2207, -21.6977, 27.6301],
  [18.3184, 12.3081],
];

const BRIX_RANGE = { what: "°Brix of a sugar solution", low: 0, high: 85 };
const TEMPERATURE_RANGE = { what: "The temperature of a sugar solution in °C", low: 0, high: 80 };

/**
 * Density in g/ml of sucrose in water from °Brix (% of the weight) and temperature.
 *
 * Source: the ICUMSA SPS-4 polynomial as printed in Bubník, Kadlec, Urban, Bruhns, Sugar Technologists Manual
 * (Bartens 1995), p. 164; taken as valid for 0–85 °Bx and 0–80 °C (within 0.3 kg/m³ of handbook tables to 70 °Bx,
 * 0.9 to 84). Throws OutOfRangeError outside. 50 °Bx at 20 °C → 1.22965; at 4 °C → 1.23616.
 */
export function sucroseDensity({ brix, temperatureC = 20 }: { brix: number; temperatureC?: number }): number {
  requireWithin(brix, BRIX_RANGE);
  requireWithin(temperatureC, TEMPERATURE_RANGE);
  const w = brix / 100;
  const x = (temperatureC - 20) / 100;
  const excess = ROWS.map((row, power) => x ** power * w * polynomial(row, w));
  return (waterKgPerM3(temperatureC) + excess.reduce((sum, term) => sum + term, 0)) / 1000;
}

/** Density of water in g/ml, 0–80 °C, by the formula that belongs to the polynomial above. 20 °C → 0.99820. */
export function waterDensity({ temperatureC = 20 }: { temperatureC?: number } = {}): number {
  requireWithin(temperatureC, TEMPERATURE_RANGE);
  return waterKgPerM3(temperatureC) / 1000;
}

/** °Brix from a measured density in g/ml: `sucroseDensity` inverted. 1.22965 at 20 °C → 50.00. */
export function brixFromDensity(measured: { densityGPerMl: number; temperatureC?: number }): number {
  const { densityGPerMl, temperatureC = 20 } = measured;
  const f = (brix: number) => sucroseDensity({ brix, temperatureC });
  const { low, high } = BRIX_RANGE;
  const what = `The density in g/ml of a sugar solution at ${temperatureC} °C`;
  requireWithin(densityGPerMl, { what, low: f(low) - 1e-6, high: f(high) + 1e-6 });
  return bisect(densityGPerMl, { f, low, high });
}

/** Grams of sucrose in a litre of solution at a temperature, by `sucroseDensity`. 50 °Bx at 20 °C → 614.8. */
export function sucroseGPerL({ brix, temperatureC = 20 }: { brix: number; temperatureC?: number }): number {
  return brix * 10 * sucroseDensity({ brix, temperatureC });
}

/** °Brix from grams of sucrose in a litre at a temperature: `sucroseGPerL` inverted. 614.8 at 20 °C → 50.00. */
export function brixFromGPerL({
  gPerL,
  temperatureC = 20,
}: {
  gPerL: number;
  temperatureC?: number;
}): number {
  const f = (brix: number) => sucroseGPerL({ brix, temperatureC });
  const { low, high } = BRIX_RANGE;
  requireWithin(gPerL, { what: "Grams of sugar in a litre of solution", low: 0, high: f(high) });
  return bisect(gPerL, { f, low, high });
}

/**
 * °Brix from an apparent specific gravity at 20/20 °C, as a hydrometer shows it.
 *
 * Source: cubic fitted to NBS Circular C440, valid up to 40 °Bx (SG 1 to 1.179). Throws OutOfRangeError outside;
 * heavier syrups: `brixFromDensity`. 1.04003 → 10.00; 1.17885 → 40.02.
 */
export function brixFromSg(sg: number): number {
  requireWithin(sg, { what: "A specific gravity 20/20 read as °Brix", low: 1, high: 1.179 });
  return Math.max(0, 182.4601 * sg ** 3 - 775.6821 * sg ** 2 + 1262.7794 * sg - 669.5622);
}

/**
 * °Brix above which sucrose crystallises out at a temperature (% of the weight at saturation).
 *
 * Source: Bubník & Kadlec in Mathlouthi & Reiser, Sucrose (Blackie 1995), pp. 101–125; 0–100 °C. An older handbook
 * series lies up to 0.6 higher, so treat the edge as soft. 20 °C → 66.72; 4 °C → 64.80.
 */
export function saturationBrix({ temperatureC }: { temperatureC: number }): number {
  requireWithin(temperatureC, { what: "The temperature of a sugar solution in °C", low: 0, high: 100 });
  return polynomial([64.447, 0.08222, 1.6169e-3, -1.558e-6, -4.63e-8], temperatureC);
}

// The denominator belongs to these coefficients; 16.879850e-3 is of another temperature scale, 0.1 kg/m³ off here.
function waterKgPerM3(t: number): number {
  const numerator = [999.83952, 16.952577, -7.9905127e-3, -46.241757e-6, 105.84601e-9, -281.03006e-12];
  return polynomial(numerator, t) / (1 + 16.887236e-3 * t);
}

function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
}
