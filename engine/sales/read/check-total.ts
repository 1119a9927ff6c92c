import type { ColumnMap } from "#engine/sales/read/columns.ts";
import { readMoneyMinor, readQuantity } from "#engine/sales/read/number.ts";
import type { SheetRows } from "#engine/sales/read/rows.ts";

/** Tax, tip or a discount may lie between the prices of a check and its total. */
const APART_MOST = 0.4;

/**
 * Whether the money column holds the total of the whole check on every line of it: the same on all lines of a check, not what the
 * line costs by its price, but about what all its lines cost together.
 *
 * Lines at 14.99 and 12.99 of one check that both say 32.83 → true.
 */
export function isCheckTotal(rows: SheetRows, map: ColumnMap): boolean {
  const { check, gross, unitPrice, quantity } = map;
  if (check === undefined || gross === undefined || unitPrice === undefined) return false;
  const checks = new Map<string, { totals: Set<number>; lines: number[] }>();
  for (const row of rows) {
    const total = amountOf(row[gross]);
    const price = amountOf(row[unitPrice]);
    const count = quantity === undefined ? 1 : readQuantity((row[quantity] ?? "").trim(), ".");
    if (total === undefined || price === undefined || count === undefined) continue;
    const number = row[check] ?? "";
    const held = checks.get(number) ?? { totals: new Set(), lines: [] };
    held.totals.add(total);
    held.lines.push(price * count);
    checks.set(number, held);
  }
  const several = [...checks.values()].filter(({ lines }) => lines.length > 1);
  return several.length > 0 && several.every(isOneTotal);
}

function isOneTotal({ totals, lines }: { totals: Set<number>; lines: number[] }): boolean {
  const [total] = totals;
  if (total === undefined || totals.size > 1) return false;
  const sum = lines.reduce((all, line) => all + line, 0);
  return (
    Math.abs(total - sum) <= APART_MOST * Math.abs(sum) && lines.every((line) => Math.abs(total - line) > 1)
  );
}

/** In hundredths, whatever the decimal mark: only how amounts compare matters. */
function amountOf(cell = ""): number | undefined {
  return readMoneyMinor(cell, ".", 2) ?? readMoneyMinor(cell, ",", 2);
}
