import type { ColumnMap } from "#engine/sales/read/columns.ts";
import {
  type DecimalEvidence,
  type DecimalMark,
  noEvidence,
  weighDecimal,
} from "#engine/sales/read/number.ts";
import type { Heading } from "#engine/sales/read/plan.ts";
import type { SheetRows } from "#engine/sales/read/rows.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";

const CELLS_REMEMBERED = 5000;

export type NumberRules = { shape: SalesShape | undefined; heading: Heading; currencyDigits: number };

/** The decimal mark of each column of numbers, decided from all its cells and those beside it; or a question. */
export function planNumbers(rows: SheetRows, firstRow: number, map: ColumnMap, rules: NumberRules) {
  return decideNumbers(weighColumns(rows, firstRow, numberColumns(map)), map, rules);
}

/** The decision on what all cells of the columns of numbers show. */
export function decideNumbers(found: readonly Weighed[], map: ColumnMap, rules: NumberRules) {
  const marks = new Set(found.flatMap(({ column, evidence }) => markOf(column, evidence, map, rules) ?? []));
  const [only] = marks.size === 1 ? marks : [];
  const decimals = new Map<number, DecimalMark>();
  let question: string | null = null;
  for (const { column, evidence } of found) {
    const own = markOf(column, evidence, map, rules);
    const stated = rules.shape?.decimal;
    // A column that shows only the other mark, and never doubtfully, is read by what it shows.
    const isOwn =
      own !== undefined && evidence.unclear === null && (evidence.dot === null) !== (evidence.comma === null);
    const mark = isOwn ? own : (stated ?? own ?? only);
    if (stated === undefined)
      question ??= askAbout(column, evidence, { own, mark, map, heading: rules.heading });
    decimals.set(column, mark ?? ".");
  }
  const shown = rules.shape?.decimal ?? only;
  return {
    styles: { decimals, decimal: shown ?? ("." as const), isDecimalShown: shown !== undefined },
    question,
  };
}

/** The columns whose numbers will be read: no price where there is an amount, no discount where there is a net. */
export function numberColumns({ quantity, gross, net, discount, unitPrice }: ColumnMap): number[] {
  const price = gross === undefined && net === undefined ? unitPrice : undefined;
  const less = net === undefined ? discount : undefined;
  return [quantity, gross, net, less, price].filter((column) => column !== undefined);
}

export type Weighed = { column: number; evidence: DecimalEvidence };

function weighColumns(rows: SheetRows, firstRow: number, columns: readonly number[]): Weighed[] {
  return columns.map((column) => {
    const evidence = noEvidence();
    const seen = new Set<string>();
    for (let index = firstRow; index < rows.length; index += 1) {
      const cell = rows[index]?.[column] ?? "";
      if (cell.length < 2 || seen.has(cell)) continue;
      if (seen.size < CELLS_REMEMBERED) seen.add(cell);
      weighDecimal(cell, evidence);
    }
    return { column, evidence };
  });
}

type Doubt = {
  own: DecimalMark | undefined;
  mark: DecimalMark | undefined;
  map: ColumnMap;
  heading: Heading;
};

function askAbout(
  column: number,
  evidence: DecimalEvidence,
  { own, mark, map, heading }: Doubt,
): string | null {
  if (evidence.dot !== null && evidence.comma !== null)
    return `the column "${heading(column)}" has "${evidence.dot}" and "${evidence.comma}": is its decimal mark "." or ","? State decimal in sales-shapes.json, or export the file again.`;
  if (own !== undefined || evidence.unclear === null) return null;
  // A till that writes one piece as "1,000" beside money as "12.50" would otherwise sell a thousand of it.
  const isThousandSold = column === map.quantity && mark !== undefined && !evidence.unclear.includes(mark);
  if (mark !== undefined && !isThousandSold) return null;
  return `is "${evidence.unclear}" in the column "${heading(column)}" a number of thousands, or one with three decimals? State decimal ("." or ",") in sales-shapes.json.`;
}

/** The mark a column shows by itself; in a currency without minor units, money has thousands and no decimals. */
function markOf(
  column: number,
  { dot, comma, unclear }: DecimalEvidence,
  map: ColumnMap,
  { currencyDigits }: NumberRules,
): DecimalMark | undefined {
  if (dot !== null) return ".";
  if (comma !== null) return ",";
  if (unclear === null || currencyDigits > 0 || column === map.quantity) return undefined;
  return unclear.includes(",") ? "." : ",";
}
