import { bisect } from "#engine/measure/bisect.ts";
import { OutOfRangeError, requireWithin } from "#engine/measure/range.ts";

// OIML International Recommendation R 22 (1973), general formula; coefficients as in Directive 76/766/EEC.
const A = [
  998.20123, -192.9769495, 389.1238958, -1668.103923, 13522.15441, -88292.78388, 306287.4042, -613838.1234,
  747017.2998, -547846.1354, 223446.0334, -39032.85426,
];
const B = [-2.0618513e-1, -5.2682542e-3, 3.6130013e-5, -3.8957702e-7, 7.169354e-9, -9.9739231e-11];
const C = [
  [
    1.693443461530087e-1, -1.046914743455169e1, 7.196353469546523e1, -7.047478054272792e2,
    3.924090430035045e3, -1.210164659068747e4, 2.248646550400788e4, -2.605562982188164e4, 1.852373922069467e4,
    -7.420201433430137e3, 1.285617841998974e3,
  ],
  [
    -1.19301300505701e-2, 2.517399633803461e-1, -2.170575700536993, 1.353034988843029e1, -5.029988758547014e1,
    1.09635566657757e2, -1.422753946421155e2, 1.08043594285623e2, -4.414153236817392e1, 7.442971530188783,
  ],
  [
    -6.802995733503803e-4, 1.876837790289664e-2, -2.002561813734156e-1, 1.02299296671922, -2.895696483903638,
    4.810060584300675, -4.672147440794683, 2.458043105903461, -5.411227621436812e-1,
  ],
  [4.075376675622027e-6, -8.76305857347111e-6, 6.515031360099368e-6, -1.51578483698721e-6],
  [-2.788074354782409e-8, 1.345612883493354e-8],
];

/** Freezing points of ethanol in water, mass fraction and °C; a handbook's figures, from memory. */
const FREEZING: readonly (readonly [massFraction: number, temperatureC: number])[] = [
  [0, 0],
  [0.05, -2.1],
  [0.1, -4.5],
  [0.2, -10.9],
  [0.3, -20.5],
];

/** Density of pure ethanol at 20 °C in g/ml: R 22 states 789.24 kg/m³; the formula gives 789.2391. */
export const ETHANOL_G_PER_ML = sum(A, 1) / 1000;

/** The temperature to which % vol always refers, in °C. */
export const REFERENCE_C = 20;

/**
 * Density in g/ml of a spirit that is ethanol and water alone, from its strength and temperature.
 *
 * `abvPct` is % vol, which refers to 20 °C whatever the temperature. Source: OIML R 22, general formula, valid
 * from −20 to 40 °C (standard deviation of the formula far below 0.1 kg/m³). Not for liqueurs: sugar is not in it.
 * Throws OutOfRangeError outside of 0–100 % vol or of that range, and where the mixture would be ice or slush.
 * 40 % vol at 20 °C → 0.94805; at −18 °C → 0.97078; 20 % vol at −18 °C → throws, it freezes.
 */
export function spiritDensity(spirit: { abvPct: number; temperatureC?: number }): number {
  return densityByMassFraction({ ...spirit, massFraction: massFraction(spirit) });
}

/** As `spiritDensity`, from the share of ethanol in the weight (0–1). 0.31 at 13 °C → 0.95642. */
export function densityByMassFraction(mixture: { massFraction: number; temperatureC?: number }): number {
  const { massFraction: p, temperatureC = REFERENCE_C } = mixture;
  requireWithin(p, { what: "The share of ethanol in the weight", low: 0, high: 1 });
  requireWithin(temperatureC, { what: "The temperature of a spirit in °C", low: -20, high: 40 });
  if (p < leastLiquidFraction(temperatureC)) {
    const abv = Math.round(abvPctOf({ massFraction: p }) * 10) / 10;
    throw new OutOfRangeError(
      `At ${temperatureC} °C a mixture of ${abv} % vol is ice or slush and has no density; weigh it warmer.`,
    );
  }
  return formula(p, temperatureC) / 1000;
}

/** Share of ethanol in the weight from % vol at 20 °C: q = p·ρ(p, 20)/ρ(1, 20) inverted. 40 → 0.332996. */
export function massFraction({ abvPct }: { abvPct: number }): number {
  requireWithin(abvPct, { what: "A strength in % vol", low: 0, high: 100 });
  return bisect(abvPct, { f: (p) => abvPctOf({ massFraction: p }), low: 0, high: 1 });
}

/** % vol at 20 °C from the share of ethanol in the weight (0–1); R 22. 0.332996 → 40.00. */
export function abvPctOf({ massFraction: p }: { massFraction: number }): number {
  requireWithin(p, { what: "The share of ethanol in the weight", low: 0, high: 1 });
  return (100 * p * sum(A, p)) / sum(A, 1);
}

/**
 * Strength in % vol (at 20 °C) of a spirit without sugar from its measured density and temperature; R 22 inverted.
 *
 * Throws OutOfRangeError where no mixture of ethanol and water has that density at that temperature.
 * 0.94805 g/ml at 20 °C → 40.00.
 */
export function spiritStrength(measured: { densityGPerMl: number; temperatureC?: number }): number {
  const { densityGPerMl, temperatureC = REFERENCE_C } = measured;
  requireWithin(temperatureC, { what: "The temperature of a spirit in °C", low: -20, high: 40 });
  const low = leastLiquidFraction(temperatureC);
  const densest = formula(low, temperatureC) / 1000;
  const lightest = formula(1, temperatureC) / 1000;
  if (densityGPerMl > densest + 1e-6 || densityGPerMl < lightest - 1e-6) {
    throw new OutOfRangeError(
      `At ${temperatureC} °C ethanol and water have a density from ${lightest.toFixed(4)} to ${densest.toFixed(4)} g/ml; ` +
        `${densityGPerMl} is outside. Sugar in it makes a spirit heavier: use a stated strength.`,
    );
  }
  const f = (p: number) => formula(p, temperatureC) / 1000;
  return abvPctOf({ massFraction: bisect(densityGPerMl, { f, low, high: 1 }) });
}

/**
 * How much a volume of spirit measured at 20 °C takes up at another temperature, in ml; R 22.
 *
 * 700 ml of 40 % vol at 4 °C → 692.6; at 30 °C → 705.1.
 */
export function spiritVolumeAt(spirit: { volumeMl: number; abvPct: number; temperatureC: number }): number {
  return (spirit.volumeMl * spiritDensity({ abvPct: spirit.abvPct })) / spiritDensity(spirit);
}

/** The smallest share of ethanol that stays liquid, between the points of the freezing curve. */
function leastLiquidFraction(temperatureC: number): number {
  const upTo = FREEZING.findIndex(([, freezesC]) => freezesC <= temperatureC);
  const [p1, t1] = FREEZING[upTo] ?? [0, 0];
  const [p0, t0] = FREEZING[upTo - 1] ?? [0, 0];
  if (t1 === t0) return 0;
  return p0 + ((p1 - p0) * (t0 - temperatureC)) / (t0 - t1);
}

/** kg/m³ of a mass fraction at a temperature. */
function formula(p: number, temperatureC: number): number {
  const t = temperatureC - REFERENCE_C;
  const mixed = C.map((row, at) => p * sum(row, p) * t ** (at + 1));
  return sum(A, p) + t * sum(B, t) + mixed.reduce((total, term) => total + term, 0);
}

/** Σ coefficient·x^k, from k = 0. */
function sum(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((total, coefficient) => total * x + coefficient, 0);
}
