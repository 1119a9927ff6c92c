import { expect, it } from "vitest";
import { smoothSeasonal, startOf } from "#engine/demand/seasonal-smoothing.ts";

it("starts at the mean of two weeks, each weekday as far from it as it was", () => {
  const values = [1, 2, 3, 1, 2, 3, 100];
  const seasons = [0, 1, 2, 0, 1, 2, 0];
  expect(startOf(values, seasons, 3)).toEqual({ level: 2, seasons: [-1, 0, 1] });
});

it("follows a bar that grows, half a week at a time", () => {
  const start = { level: 10, seasons: [0, 0] };
  const grown = smoothSeasonal([20, 20, 20, 20, 20, 20], [0, 1, 0, 1, 0, 1], { start, alpha: 0.2, gamma: 0 });
  expect(grown.level).toBeCloseTo(20 - 10 * 0.8 ** 6, 9);
});
