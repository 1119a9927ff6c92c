import type { ColumnMap } from "#engine/sales/read/columns.ts";
import { type DecimalMark, isEmptyMoney } from "#engine/sales/read/number.ts";
import { cut } from "#engine/sales/read/place-in-time.ts";
import type { CellStyles } from "#engine/sales/read/plan.ts";

export type Money = { grossMinor: number | null; netMinor: number | null };
export type MoneyReading = {
  map: ColumnMap;
  styles: CellStyles;
  headings: readonly string[];
  /** Reads an amount by the decimal mark, in minor units; undefined for what is none. */
  minorUnits: Record<DecimalMark, (cell: string) => number | undefined>;
  /** What a lone price column holds: the price of one, of the whole line, or nobody can tell. */
  priceIs: "each" | "line" | "unclear";
};

/**
 * The money of a row in minor units, or why it cannot be read.
 *
 * Without a net column, net is gross less the discount where there is a discount column; else it stays null. A lone price
 * column is taken as gross. An empty cell is null: a line without money was still poured.
 */
export function readMoney(row: readonly string[], quantity: number, reading: MoneyReading): Money | string {
  const { map } = reading;
  const gross = amountIn(row, map.gross, reading);
  const net = amountIn(row, map.net, reading);
  const discount = amountIn(row, map.discount, reading);
  const price = amountIn(row, map.unitPrice, reading);
  for (const amount of [gross, net, discount, price]) if (typeof amount === "string") return amount;
  const amounts = { gross, net, discount, price } as Record<
    "gross" | "net" | "discount" | "price",
    number | null
  >;
  const grossMinor =
    map.gross === undefined && map.net === undefined
      ? ofPrice(amounts.price, quantity, reading)
      : amounts.gross;
  const lessDiscount =
    map.net === undefined && grossMinor !== null && amounts.discount !== null
      ? grossMinor - Math.sign(grossMinor) * Math.abs(amounts.discount)
      : null;
  return { grossMinor, netMinor: amounts.net ?? lessDiscount };
}

function ofPrice(price: number | null, quantity: number, { priceIs }: MoneyReading): number | null {
  if (price === null) return null;
  if (Math.abs(quantity) === 1 || priceIs === "line") return price;
  return priceIs === "each" ? Math.round(price * Math.abs(quantity)) : null;
}

function amountIn(
  row: readonly string[],
  column: number | undefined,
  reading: MoneyReading,
): number | null | string {
  const cell = column === undefined ? "" : (row[column] ?? "");
  if (column === undefined || cell === "" || isEmptyMoney(cell)) return null;
  const decimal = reading.styles.decimals.get(column) ?? reading.styles.decimal;
  const minor = reading.minorUnits[decimal](cell);
  return (
    minor ??
    `${reading.headings[column]}: "${cut(cell)}" is no amount of money; write it as in 12${decimal}50`
  );
}

/** What is taken back brings nothing in, however the till signs its money. */
export function takenBack({ grossMinor, netMinor }: Money): Money {
  const back = (minor: number | null): number | null => (minor === null || minor <= 0 ? minor : -minor);
  return { grossMinor: back(grossMinor), netMinor: back(netMinor) };
}
