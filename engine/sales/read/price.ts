import type { ColumnMap } from "#engine/sales/read/columns.ts";
import { foldHeading } from "#engine/sales/read/headings.ts";
import type { MoneyReading } from "#engine/sales/read/money.ts";
import { readMoneyMinor, readQuantity } from "#engine/sales/read/number.ts";
import type { CellStyles } from "#engine/sales/read/plan.ts";
import type { SheetRows } from "#engine/sales/read/rows.ts";

const ROWS_COMPARED = 20_000;

/** Headings that say themselves that the price is of one. */
const OF_ONE =
  /\b(?:unit|each|stuck|stueck|stuckpreis|stueckpreis|einzelpreis|unitaire|unitario|stuksprijs|eenheidsprijs|styckpris|enhetspris|stykpris|jednostkowa|yksikkohinta)\b/;

/**
 * Whether a lone price column is the price of one or of the whole line: an item sold both singly and by twos and threes tells, or
 * else a heading like "Unit price". Unclear when neither does, or when items disagree.
 */
export function priceMeaning(
  rows: SheetRows,
  firstRow: number,
  map: ColumnMap,
  styles: CellStyles,
  { currencyDigits, heading }: { currencyDigits: number; heading: string },
): MoneyReading["priceIs"] {
  const { item, quantity, unitPrice } = map;
  if (item === undefined || unitPrice === undefined || map.gross !== undefined || map.net !== undefined)
    return "unclear";
  const single = new Map<string, number>();
  let each = 0;
  let line = 0;
  const body = rows.slice(firstRow, firstRow + ROWS_COMPARED);
  for (const wanted of [true, false]) {
    for (const row of body) {
      const count =
        quantity === undefined ? 1 : readQuantity(row[quantity] ?? "", styles.decimals.get(quantity) ?? ".");
      const price = readMoneyMinor(
        row[unitPrice] ?? "",
        styles.decimals.get(unitPrice) ?? ".",
        currencyDigits,
      );
      if (count === undefined || price === undefined || price === 0 || count <= 0) continue;
      const known = single.get(row[item] ?? "");
      if (wanted && count === 1) single.set(row[item] ?? "", price);
      else if (!wanted && count !== 1 && known === price) each += 1;
      else if (!wanted && count !== 1 && known !== undefined && Math.round(known * count) === price)
        line += 1;
    }
  }
  if (each > 0 && line > 0) return "unclear";
  if (line > 0) return "line";
  return each > 0 || OF_ONE.test(foldHeading(heading)) ? "each" : "unclear";
}
