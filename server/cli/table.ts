import { styleText } from "node:util";

/** One column of a report: its head (with the unit) and the cell of a row. */
export type Column<Row> = {
  head: string;
  cell: (row: Row) => string | number | null | undefined;
  /** Digits after the point for people; numbers are right-aligned. */
  digits?: number;
  /** How a text stands out on a terminal that has colour. */
  style?: (row: Row) => "bold" | "dim" | "yellow" | "cyan" | undefined;
};

/** Whether to write colour: only to a terminal that has it; NO_COLOR is honoured by `hasColors`. */
export function hasColour(stream: NodeJS.WriteStream): boolean {
  return stream.isTTY === true && (process.env.NO_COLOR ?? "") === "" && stream.hasColors();
}

/** Rows as aligned text: numbers to the right, an empty cell as "–". */
export function textTable<Row>(
  columns: readonly Column<Row>[],
  rows: readonly Row[],
  colour: boolean,
): string {
  const isNumeric = columns.map(
    ({ cell, digits }) => digits !== undefined || rows.some((row) => typeof cell(row) === "number"),
  );
  const texts = rows.map((row) => columns.map((column) => cellText(column, row)));
  const widths = columns.map(({ head }, index) =>
    Math.max(width(head), ...texts.map((cells) => width(cells[index] ?? ""))),
  );
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, index) => pad(cell, widths[index] ?? 0, isNumeric[index] ?? false))
      .join("  ")
      .trimEnd();
  const head = line(columns.map((column) => column.head));
  const rule = widths.map((size) => "─".repeat(size)).join("  ");
  const body = rows.map((row, index) => {
    const cells = texts[index] ?? [];
    const styles = colour ? columns.map((column) => column.style?.(row)) : [];
    if (styles.every((style) => style === undefined)) return line(cells);
    return cells
      .map((cell, at) => {
        const padded = pad(cell, widths[at] ?? 0, isNumeric[at] ?? false);
        const style = styles[at];
        return style === undefined ? padded : styleText(style, padded);
      })
      .join("  ");
  });
  return [colour ? styleText("bold", head) : head, colour ? styleText("dim", rule) : rule, ...body].join(
    "\n",
  );
}

function cellText<Row>({ cell, digits }: Column<Row>, row: Row): string {
  const value = cell(row);
  if (value === null || value === undefined || value === "") return "–";
  if (typeof value === "string") return value;
  return numberText(value, digits ?? (Number.isInteger(value) ? 0 : 1));
}

/** A number for people: grouped, with a fixed number of digits, and no "−0". 12345.678 → "12 345.7". */
export function numberText(value: number, digits: number): string {
  if (!Number.isFinite(value)) return "–";
  const rounded = Number(value.toFixed(digits));
  const [whole = "0", fraction] = Math.abs(rounded).toFixed(digits).split(".");
  const grouped = whole.replace(/\B(?=(\d{3})+(?!\d))/g, "\u2009");
  return `${rounded < 0 ? "−" : ""}${grouped}${fraction === undefined ? "" : `.${fraction}`}`;
}

function width(text: string): number {
  return [...text.normalize("NFC")].length;
}

function pad(text: string, size: number, toRight: boolean): string {
  const gap = " ".repeat(Math.max(0, size - width(text)));
  return toRight ? gap + text : text + gap;
}
