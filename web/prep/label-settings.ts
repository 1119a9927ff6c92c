import { useDeviceSetting } from "../parts/use-device-setting.ts";
import { say } from "../texts/say.ts";

/** What labels are printed on; the sizes stand in prep.css under the same names. */
export const LABEL_STOCKS = [
  { value: "paper", text: "prep.stockPaper" },
  { value: "a4-24", text: "prep.stockA4" },
  { value: "letter-30", text: "prep.stockLetter" },
  { value: "roll-62", text: "prep.stockRoll62" },
  { value: "roll-102", text: "prep.stockRoll102" },
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

/**
 * How this device prints labels: on what, and with which line on the counting of days. That begins as the rule of the US Food
 * Code (3-501.17); others count otherwise, so each house can write its own.
 */
export function useLabelSettings() {
  const [stored, setStock] = useDeviceSetting("label-stock", "paper");
  const [dayLine, setDayLine] = useDeviceSetting("label-day-line", say("prep.dayOne"));
  const stock: LabelStock = LABEL_STOCKS.find(({ value }) => value === stored)?.value ?? "paper";
  return { stock, setStock, dayLine, setDayLine };
}
