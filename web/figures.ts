import type { BaseUnit } from "#engine/measure/units.ts";
import { formatAmount, formatNumber, type Measuring, numbers, withUnit } from "./format.ts";

// Figures of reports. The count shows none of them, so its first load does not carry this.

/** Amount with a sign, for what is too much or too little. */
export function formatSigned(amount: number, base: BaseUnit, venue: Measuring): string {
  const text = formatAmount(amount, base, venue);
  return amount > 0 && !/^[0.,]+(\s|$)/.test(text) ? `+${text}` : text;
}

/** Containers of a pack. 1680 ml of 700 → "2.4 × 700 ml"; without a container, the amount. */
export function formatContainers(
  amount: number,
  {
    base,
    containerSize,
    packName,
  }: { base: BaseUnit; containerSize: number | null; packName: string | null },
  venue: Measuring,
): string {
  if (containerSize === null || containerSize <= 0 || packName === null || base === "each") {
    return formatAmount(amount, base, venue);
  }
  return `${withUnit(formatNumber(amount / containerSize, 1), "×")} ${packName}`;
}

/** A share as whole percent; what is small but not nothing reads "<1%". */
export function formatShare(share: number): string {
  const percent = numbers({ style: "percent", maximumFractionDigits: 0 });
  if (share > 0 && share < 0.01) return `<${percent.format(0.01)}`;
  if (share < 1 && share > 0.99) return `>${percent.format(0.99)}`;
  return percent.format(share);
}
