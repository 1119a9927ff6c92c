import "../support/english.ts";
import { expect, it } from "vitest";
import type { OrderReportLine } from "../../web/answers.ts";
import { draftLines, emailText, lineKey, minimumOf, totalOf } from "../../web/order/order-draft.ts";

const GIN = {
  item: "Dry gin",
  pack: "700 ml",
  quantity: 4,
  of: "container",
  base: "ml",
  onHand: 700,
  onOrder: 0,
  par: 3500,
  expectedUse: 1800,
  runOutChance: 0.4,
  runOutChanceWith: 0.02,
  runOutChanceWithout: 0.6,
  cost: 80,
  why: "",
} as OrderReportLine;
const SODA: OrderReportLine = { ...GIN, item: "Soda", pack: "200 ml", quantity: 2, of: "case", cost: 30 };

const minimum = (lines: OrderReportLine[], value: number | null, cases: number | null) =>
  minimumOf({
    supplier: { minimumValueMinor: value, minimumCases: cases },
    lines: draftLines(lines, new Map()),
    casesOf: ({ of }) => (of === "case" ? 1 : 1 / 6),
    currency: "EUR",
    formatMoney: (major) => `€${major}`,
  });

it("lets the cost follow a quantity changed by hand and remembers what was suggested", () => {
  const [line] = draftLines([GIN], new Map([[lineKey(GIN), 6]]));
  expect(line).toMatchObject({ quantity: 6, suggested: 4, cost: 120 });
});

it("keeps a line without a price out of the total", () => {
  expect(totalOf(draftLines([GIN, { ...SODA, cost: null }], new Map()))).toBe(80);
});

it.each([
  [11_000, null, true, "minimum met"],
  [12_500, null, false, "€15 short of the minimum"],
  [null, 4, false, "1.4 cases short of the minimum"],
  [null, null, true, "no minimum"],
] as const)("holds gin and soda against a minimum of %s cents and %s cases", (value, cases, isMet, words) => {
  expect(minimum([GIN, SODA], value, cases)).toEqual({ isMet, words });
});

it("writes an e-mail that leaves out what was struck from the order", () => {
  const lines = draftLines([GIN, SODA], new Map([[lineKey(GIN), 0]]));
  const text = emailText(lines, { venue: "The Back Room", supplier: "Quay Drinks", arrives: "Wed 25 Nov" });
  expect(text).toContain("deliver to The Back Room on Wed 25 Nov");
  expect(text).toContain("2 cases of 200 ml  Soda");
  expect(text).not.toContain("Dry gin");
});
