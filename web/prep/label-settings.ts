import { useDeviceSetting } from "./use-device-setting.ts";

/** What labels are printed on; the sizes stand in prep.css under the same names. */
export const LABEL_STOCKS = [
  { value: "paper", label: "plain paper, to cut" },
  { value: "a4-24", label: "A4 sheet, 24 of 70 × 37 mm" },
  { value: "letter-30", label: "Letter sheet, 30 of 2⅝ × 1 in" },
  { value: "roll-62", label: "roll, 62 × 40 mm" },
  { value: "roll-102", label: "roll, 4 × 2 in" },
] as const;

export type LabelStock = (typeof LABEL_STOCKS)[number]["value"];

const LARGEST_PT: Record<LabelStock, number> = {
  paper: 10,
  "a4-24": 9,
  "letter-30": 8,
  "roll-62": 10,
  "roll-102": 13,
};

/** The type a label begins with, before it shrinks to hold a long text. */
export function largestPtOf(stock: LabelStock): number {
  return LARGEST_PT[stock];
}

/** The rule of the US Food Code (3-501.17); others count otherwise, so each house can write its own line. */
const DAY_ONE = "Day of preparation is day 1";

/** How this device prints labels: on what, and with which line on the counting of days. */
export function useLabelSettings() {
  const [stored, setStock] = useDeviceSetting("label-stock", "paper");
  const [dayLine, setDayLine] = useDeviceSetting("label-day-line", DAY_ONE);
  const stock: LabelStock = LABEL_STOCKS.find(({ value }) => value === stored)?.value ?? "paper";
  return { stock, setStock, dayLine, setDayLine };
}
