import { expect, it } from "vitest";
import { usualEmptyG, volumeByLevel, volumeByWeight } from "#engine/measure/container.ts";
import { resolutionSd } from "#engine/measure/uncertainty.ts";

const bottle = { volumeMl: 750, emptyG: 520, fullG: null };
const weighing = { densityGPerMl: 0.9505, container: bottle, scaleSdG: resolutionSd(1) };

it("weighs what is left in a bottle, and the spread of empty bottles is nearly all of the doubt", () => {
  const left = volumeByWeight({ ...weighing, grossG: 1012 });
  expect(left.volumeMl).toBeCloseTo(517.6223, 4);
  expect(left.sd).toBeCloseTo(Math.hypot(resolutionSd(1), 5.2) / 0.9505, 6);
  expect(left.tare).toBe("empty weight");
});

it("works the empty weight out from a full one", () => {
  const container = { volumeMl: 750, emptyG: null, fullG: 520 + 750 * 0.9505 };
  const left = volumeByWeight({ ...weighing, container, grossG: 1012 });
  expect(left.volumeMl).toBeCloseTo(517.6223, 4);
  expect(left.tare).toBe("full weight");
});

it("takes the usual empty weight of the size when none is known, and is far less sure", () => {
  const container = { volumeMl: 750, emptyG: null, fullG: null };
  const left = volumeByWeight({ ...weighing, container, grossG: 1012 });
  expect(left.tare).toBe("usual for its size");
  expect(left.sd).toBeGreaterThan(100);
});

it("has no usual empty weight for a keg: it must be weighed or its stamp read", () => {
  const keg = { volumeMl: 30_000, emptyG: null, fullG: null };
  const onScale = { grossG: 25_000, densityGPerMl: 1.01, container: keg, scaleSdG: 50 };
  expect(() => volumeByWeight(onScale)).toThrow(/read the stamp/);
  const stamped = { ...onScale, container: { ...keg, emptyG: 9800 } };
  expect(volumeByWeight(stamped).volumeMl).toBeCloseTo(15_200 / 1.01, 6);
});

it("reads an empty bottle that is a drop lighter than another as empty, and a hair over full as full", () => {
  expect(volumeByWeight({ ...weighing, grossG: 516 }).volumeMl).toBe(0);
  expect(volumeByWeight({ ...weighing, grossG: 520 + 755 * 0.9505 }).volumeMl).toBe(750);
});

it.each([400, 1500])("refuses %d g, which no such bottle weighs", (grossG) => {
  expect(() => volumeByWeight({ ...weighing, grossG })).toThrow(/not a weight of this container/);
});

it("refuses a full weight below that of its contents", () => {
  const container = { volumeMl: 750, emptyG: null, fullG: 600 };
  expect(() => volumeByWeight({ ...weighing, container, grossG: 500 })).toThrow(/weigh a full one again/);
});

it("reads tenths of a bottle and the level of a keg", () => {
  const tenths = volumeByLevel({ share: 4 / 10, volumeMl: 750, readingSd: resolutionSd(0.1) });
  expect(tenths.volumeMl).toBeCloseTo(300, 9);
  expect(tenths.sd).toBeCloseTo(21.650635, 6);
  expect(volumeByLevel({ share: 0.25, volumeMl: 50_000, readingSd: 0.05 })).toEqual({
    volumeMl: 12_500,
    sd: 2500,
  });
  expect(volumeByLevel({ share: 1, volumeMl: 750, readingSd: 0.04 })).toEqual({ volumeMl: 750, sd: 0 });
  expect(() => volumeByLevel({ share: 1.1, volumeMl: 750, readingSd: 0 })).toThrow(/part left/);
});

it("finds sizes between the usual ones and stops at their ends", () => {
  expect(usualEmptyG(700)).toBe(500);
  expect(usualEmptyG(725)).toBe(510);
  expect(() => usualEmptyG(5000)).toThrow();
  expect(() => usualEmptyG(20)).toThrow();
});
