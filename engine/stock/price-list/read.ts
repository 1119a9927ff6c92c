import { gtin14 } from "#engine/measure/gtin.ts";
import type { Unit } from "#engine/measure/units.ts";
import { decodeFile } from "#engine/sales/read/decode.ts";
import { SalesFileError } from "#engine/sales/read/error.ts";
import { type DecimalMark, noEvidence, readQuantity, weighDecimal } from "#engine/sales/read/number.ts";
import { DELIMITERS, firstRowsOf, rowsOf, type SheetRows, statedDelimiter } from "#engine/sales/read/rows.ts";
import { columnsByHeading, findPriceColumns, type PriceColumns } from "#engine/stock/price-list/columns.ts";
import { readPackWords } from "#engine/stock/price-list/pack-words.ts";
import { readPrice } from "#engine/stock/price-list/price.ts";

/** One line of a supplier's list. `price` is in major units; `pricePer` null where the list does not say of what. */
export type PriceLine = {
  /** Row in the file, from 1. */
  row: number;
  product: string;
  perCase: number | null;
  amount: number;
  unit: Unit;
  price: number;
  pricePer: "case" | "container" | null;
  code: string;
  gtin: string;
  category: string;
  abv: number | null;
};

export type PriceList = {
  headings: string[];
  columns: PriceColumns;
  lines: PriceLine[];
  refused: { row: number; reason: string }[];
  /** What must be asked before anything can be taken over. */
  questions: ("pricePer" | "decimal")[];
};

/** What a person has said about a list where it does not say it itself. */
export type PriceListAnswers = {
  columns?: PriceColumns | undefined;
  decimal?: DecimalMark | undefined;
  pricePer?: "case" | "container" | undefined;
};

const LINES_MOST = 20_000;

/**
 * Reads a supplier's price list: a delimited text of any shape, title lines above and section lines between allowed.
 *
 * The size may have a column of its own or stand in the product's name. A price without "case" or "bottle" in its heading is
 * asked for, never guessed, where cases hold more than one. Throws SalesFileError (a file that cannot be
 * read) where no headings are found and for what is no text.
 */
export function readPriceList(
  bytes: Uint8Array,
  fileName: string,
  answers: PriceListAnswers = {},
): PriceList {
  const { text } = decodeFile(bytes, fileName);
  const { rows, header } = sheetOf(text, fileName);
  const headings = (rows[header] ?? []).map((cell) => cell.trim());
  const body = rows.slice(header + 1);
  if (body.length > LINES_MOST)
    throw new SalesFileError(fileName, `the list has more than ${LINES_MOST} rows; split it.`);
  const columns = answers.columns ?? findPriceColumns(headings, body.slice(0, 500));
  const decimal = answers.decimal ?? decimalOf(body, columns);
  const list: PriceList = { headings, columns, lines: [], refused: [], questions: [] };
  if (decimal === undefined) list.questions.push("decimal");
  let section = "";
  body.forEach((cells, at) => {
    const row = header + 2 + at;
    const filled = cells.filter((cell) => cell.trim() !== "");
    if (filled.length === 0) return;
    // A line with one text alone heads a section: "SPIRITS".
    if (filled.length === 1) {
      section = filled[0]?.trim() ?? "";
      return;
    }
    const line = lineOf(cells, { columns, decimal: decimal ?? ".", section, pricePer: answers.pricePer });
    if (typeof line === "string") list.refused.push({ row, reason: line });
    else list.lines.push({ row, ...line });
  });
  if (list.lines.some(({ perCase, pricePer }) => pricePer === null && (perCase ?? 1) > 1))
    list.questions.push("pricePer");
  return list;
}

function sheetOf(text: string, fileName: string): { rows: SheetRows; header: number } {
  const stated = statedDelimiter(text);
  const tried = (stated === undefined ? DELIMITERS : [stated]).flatMap((delimiter) =>
    firstRowsOf(text, delimiter, 60).map((row, header) => {
      const { product, price, casePrice, containerPrice, ...more } = columnsByHeading(row);
      const isList =
        product !== undefined && [price, casePrice, containerPrice].some((column) => column !== undefined);
      return { delimiter, header, strength: isList ? 2 + Object.keys(more).length : 0 };
    }),
  );
  const [best] = tried.sort((a, b) => b.strength - a.strength || a.header - b.header);
  if (best === undefined || best.strength === 0) {
    throw new SalesFileError(
      fileName,
      "no row of headings names a product and a price. Give the columns headings such as Product, Size and Price.",
    );
  }
  return { rows: rowsOf(text, best.delimiter, fileName), header: best.header };
}

/** The decimal mark by the price columns as a whole; undefined where they could be read both ways. */
function decimalOf(
  rows: SheetRows,
  { price, casePrice, containerPrice }: PriceColumns,
): DecimalMark | undefined {
  const evidence = noEvidence();
  for (const row of rows) {
    for (const column of [price, casePrice, containerPrice]) {
      if (column !== undefined) weighDecimal(row[column] ?? "", evidence);
    }
  }
  if (evidence.dot !== null && evidence.comma !== null) return undefined;
  if (evidence.comma !== null) return ",";
  if (evidence.dot !== null || evidence.unclear === null) return ".";
  return undefined;
}

type Reading = {
  columns: PriceColumns;
  decimal: DecimalMark;
  section: string;
  pricePer: "case" | "container" | undefined;
};

function lineOf(
  cells: readonly string[],
  { columns, decimal, section, pricePer }: Reading,
): Omit<PriceLine, "row"> | string {
  const cell = (role: keyof PriceColumns) =>
    columns[role] === undefined ? "" : (cells[columns[role]] ?? "").trim();
  const inSize = readPackWords(cell("size"));
  const inName = readPackWords(cell("product"));
  const size = inSize ?? inName;
  const product = inSize === undefined && inName !== undefined ? inName.rest : cell("product");
  if (product === "") return "names no product";
  if (size === undefined) return `“${product}” has no size that can be read, such as 70 cl or 6 x 1 L`;
  const stated = cell("perCase") === "" ? null : readQuantity(cell("perCase"), decimal);
  if (stated === undefined || (stated !== null && !(Number.isInteger(stated) && stated > 0))) {
    return `“${cell("perCase")}” is no number of containers in a case`;
  }
  const priced = priceIn(cell, decimal, pricePer);
  if (typeof priced === "string") return `“${product}”: ${priced}`;
  const gtin = cell("gtin");
  const abv = readQuantity(cell("abv").replace(/\s*%.*$/, ""), decimal);
  return {
    product,
    perCase: stated ?? inSize?.perCase ?? inName?.perCase ?? null,
    amount: size.amount,
    unit: size.unit,
    ...priced,
    code: cell("code"),
    gtin: gtin14(gtin) === undefined ? "" : gtin.replace(/[\s-]/g, ""),
    category: cell("category") || section,
    abv: abv !== undefined && abv > 0 && abv <= 100 ? abv : null,
  };
}

function priceIn(
  cell: (role: keyof PriceColumns) => string,
  decimal: DecimalMark,
  answered: "case" | "container" | undefined,
) {
  const roles = [
    ["casePrice", "case"],
    ["containerPrice", "container"],
    ["price", answered ?? null],
  ] as const;
  for (const [role, pricePer] of roles) {
    const text = cell(role);
    if (text === "") continue;
    const price = readPrice(text, decimal);
    return price === undefined || price < 0 ? `“${text}” is no price` : { price, pricePer };
  }
  return "has no price";
}
