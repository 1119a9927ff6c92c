import { expect, it } from "vitest";
import { wape } from "#engine/demand/accuracy.ts";
import { smoothLevel } from "#engine/demand/level.ts";
import { smoothSeasonal } from "#engine/demand/seasonal-smoothing.ts";
import { addDays } from "#engine/time.ts";

/** Annual flow of the Nile at Aswan 1871–1970 (R datasets, after Cobb 1978). */
const NILE = [
  1120, 1160, 963, 1210, 1160, 1160, 813, 1230, 1370, 1140, 995, 935, 1110, 994, 1020, 960, 1180, 799, 958,
  1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774, 840, 874, 694, 940, 833, 701, 916, 692, 1020,
  1050, 969, 831, 726, 456, 824, 702, 1120, 1100, 832, 764, 821, 768, 845, 864, 862, 698, 845, 744, 796, 1040,
  759, 781, 865, 845, 944, 984, 897, 822, 1010, 771, 676, 649, 846, 812, 742, 801, 1040, 860, 874, 848, 890,
  744, 749, 838, 1050, 918, 986, 797, 923, 975, 815, 1020, 906, 901, 1170, 912, 746, 919, 718, 714, 740,
];

// R stats::HoltWinters(Nile, alpha = .3, beta = FALSE, gamma = FALSE): level 788.440126.
it("smooths the level as simple exponential smoothing does", () => {
  const halfLifeDays = Math.log(0.5) / Math.log(0.7);
  const dates = NILE.map((_, day) => addDays("2026-01-01", day));
  const open = { dates, serves: Float64Array.from(NILE) };
  expect(smoothLevel(open, [1, 1, 1, 1, 1, 1, 1], halfLifeDays).level).toBeCloseTo(788.440126, 5);
});

// Seasonal naive on three weeks, accuracy by R forecast::accuracy and scikit-learn: WAPE 0.102189781.
it("measures the error of a week by WAPE as published accuracy routines do", () => {
  const sold = [14, 15, 10, 16, 23, 29, 30];
  const lastWeek = [13, 14, 11, 15, 21, 33, 26];
  const cases = sold.map((value, day) => ({ sold: value, expected: lastWeek[day] ?? 0 }));
  expect(wape(cases)).toBeCloseTo(0.102189781, 9);
});

// R forecast::ets, model ANA, on fpp2::elecdaily with α = 0.2, γ = 0.1: fitted values 1–4 and states. The first
// three days of the series from memory, checked by the fit of the second, third and fourth.
it("smooths with a weekday season as ETS(A,N,A) does", () => {
  const seasons = [
    8.04503411, 15.30162745, 14.52461717, -21.13670394, -31.64416319, -0.57404747, 15.48363586,
  ];
  const start = { level: 188.88067911, seasons };
  const demand = [174.8963, 188.5909, 188.9169];
  const fitted = [196.92571322, 199.77642298, 196.76231508, 159.53190908];
  for (const [day, expected] of fitted.entries()) {
    const weekdays = demand.slice(0, day).map((_, index) => index);
    const state = smoothSeasonal(demand.slice(0, day), weekdays, { start, alpha: 0.2, gamma: 0.1 });
    expect(state.level + (state.seasons[day] ?? 0)).toBeCloseTo(expected, 3);
  }
});

// R forecast::accuracy on three weeks, seasonal naive of the last: MASE with m = 7 is 1.4, MAE 2.
it("scales the error of a forecast by the same-weekday error as MASE does", () => {
  const weeks = [
    [12, 15, 9, 14, 20, 31, 28],
    [11, 16, 10, 13, 22, 30, 27],
    [13, 14, 11, 15, 21, 33, 26],
    [14, 15, 10, 16, 23, 29, 30],
  ];
  const naive = (from: number, to: number) =>
    weeks
      .slice(from, to)
      .flatMap((week, index) =>
        week.map((sold, day) => ({ sold, expected: weeks[from + index - 1]?.[day] ?? 0 })),
      );
  const meanError = (cases: ReturnType<typeof naive>) =>
    ((wape(cases) ?? 0) * cases.reduce((sum, { sold }) => sum + sold, 0)) / cases.length;
  expect(meanError(naive(3, 4))).toBeCloseTo(2, 9);
  expect(meanError(naive(3, 4)) / meanError(naive(1, 3))).toBeCloseTo(1.4, 9);
});
