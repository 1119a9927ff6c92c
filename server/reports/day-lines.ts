import { currencyDigits } from "#engine/currency.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";

/** A line as the till has it, money in major units; `staff` is "" where it is not known who rang it. */
export type DayLine = Pick<SaleLine, "at" | "check" | "lineNo" | "ringName" | "modifiers" | "quantity"> & {
  gross: number | null;
  net: number | null;
  staff: string;
};

/** Lines of a day for people. */
export function dayLines(lines: readonly SaleLine[], currency: string): DayLine[] {
  const minor = 10 ** currencyDigits(currency);
  return lines.map(({ at, check, lineNo, ringName, modifiers, quantity, grossMinor, netMinor, staff }) => ({
    at,
    check,
    lineNo,
    ringName,
    modifiers,
    quantity,
    gross: grossMinor === null ? null : grossMinor / minor,
    net: netMinor === null ? null : netMinor / minor,
    staff: staff ?? "",
  }));
}
