import { expect, it } from "vitest";
import { DEFAULT_HOUSE_ML } from "#engine/measure/units.ts";
import { formatContainers, formatShare, formatSigned } from "../../web/figures.ts";
import { formatAmount, formatMoment, inShownUnit } from "../../web/format.ts";
import { formatMinor, formatMoney } from "../../web/money.ts";
import { plainSpaces } from "../support/plain-spaces.ts";

const IN_OZ = { show: "oz", oz: "us", houseMl: DEFAULT_HOUSE_ML } as const;
const IN_ML = { ...IN_OZ, show: "ml" } as const;
const IN_CL = { ...IN_OZ, show: "cl" } as const;

// 29.5735295625 ml to the US fluid ounce: NIST Handbook 44, Appendix C.
it.each([
  [29.5735295625, IN_OZ, 1],
  [28.4130625, { ...IN_OZ, oz: "imperial" } as const, 1],
  [700, IN_CL, 70],
  [700, IN_ML, 700],
])("shows %d ml in the unit the venue reads", (ml, venue, shown) => {
  expect(inShownUnit(ml, "ml", venue)).toBeCloseTo(shown, 9);
});

it.each([
  [2100, "ml", IN_ML, "2,100 ml"],
  [2100, "ml", IN_OZ, "71.0 oz"],
  [12, "each", IN_OZ, "12"],
  [4.5, "each", IN_OZ, "4.5"],
  [0, "ml", IN_OZ, "0 oz"],
  [-420, "ml", IN_ML, "−420 ml"],
] as const)("writes %d %s as %s", (amount, base, venue, text) => {
  expect(plainSpaces(formatAmount(amount, base, venue))).toBe(text);
});

it("keeps a number and its unit on one line", () => {
  expect(formatAmount(1085, "ml", IN_OZ)).toBe("36.7\u00a0oz");
});

it("never shows a minus before nothing", () => {
  expect(formatAmount(-0.2, "g", IN_ML)).not.toContain("−0 ");
  expect(formatMoney(-0.001, "EUR")).not.toContain("−");
});

it("marks a surplus with a plus and leaves nothing without a sign", () => {
  expect(formatSigned(420, "ml", IN_ML)).toBe("+420\u00a0ml");
  expect(formatSigned(0, "ml", IN_ML)).toBe("0\u00a0ml");
});

it("counts bottles where a pack is known, and pieces as pieces", () => {
  const bottle = { base: "ml", containerSize: 700, packName: "700 ml" } as const;
  expect(formatContainers(1680, bottle, IN_ML)).toBe("2.4\u00a0× 700 ml");
  expect(formatContainers(1680, { ...bottle, packName: null }, IN_ML)).toBe("1,680\u00a0ml");
  expect(formatContainers(24, { base: "each", containerSize: 12, packName: "dozen" }, IN_ML)).toBe("24");
});

// ISO 4217: the yen has no minor unit.
it("writes minor units by the currency's own digits", () => {
  expect(formatMinor(1250, "EUR")).toBe("€12.50");
  expect(formatMinor(1250, "JPY")).toBe("¥1,250");
});

it("never rounds a chance to never or always", () => {
  expect(formatShare(0.004)).toBe("<1%");
  expect(formatShare(0.996)).toBe(">99%");
  expect(formatShare(0)).toBe("0%");
});

it("shows a moment on the venue's clock, wherever the phone is", () => {
  expect(formatMoment("2026-11-23T15:30:00Z", { timeZone: "Europe/Athens" })).toContain("17:30");
});
