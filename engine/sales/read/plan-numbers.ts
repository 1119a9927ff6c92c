import type { ColumnMap } from "#engine/sales/read/columns.ts";
import { type DecimalMark, noEvidence, weighDecimal } from "#engine/sales/read/number.ts";
import type { Heading } from "#engine/sales/read/plan.ts";
import type { SheetRows } from "#engine/sales/read/rows.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";

const CELLS_REMEMBERED = 5000;

/** The decimal mark of each column of numbers, decided from all its cells and those beside it; or a question. */
export function planNumbers(
  rows: SheetRows,
  firstRow: number,
  map: ColumnMap,
  shape: SalesShape | undefined,
  heading: Heading,
) {
  const { quantity, gross, net, discount, unitPrice } = map;
  const columns = [quantity, gross, net, discount, unitPrice].filter((column) => column !== undefined);
  const found = columns.map((column) => ({
    column,
    evidence: noEvidence(),
    thousandths: true,
    seen: new Set<string>(),
  }));
  for (let index = firstRow; index < rows.length; index += 1) {
    for (const one of found) {
      const cell = rows[index]?.[one.column] ?? "";
      if (cell.length < 2 || one.seen.has(cell)) continue;
      if (one.seen.size < CELLS_REMEMBERED) one.seen.add(cell);
      weighDecimal(cell, one.evidence);
      if (one.thousandths && /[1-9]/.test(cell) && !/[.,]000\D*$/.test(cell)) one.thousandths = false;
    }
  }
  const decimals = new Map<number, DecimalMark>();
  const marks = new Set(found.flatMap(({ evidence }) => markOf(evidence) ?? []));
  const [only] = marks.size === 1 ? marks : [];
  let question: string | null = null;
  for (const { column, evidence, thousandths } of found) {
    const mark = shape?.decimal ?? markOf(evidence) ?? (evidence.unclear === null ? undefined : only);
    if (shape?.decimal === undefined && evidence.dot !== null && evidence.comma !== null)
      question ??= `the column "${heading(column)}" has "${evidence.dot}" and "${evidence.comma}": is its decimal mark "." or ","? State decimal in sales-shapes.json, or export the file again.`;
    const isThousands = mark !== undefined && evidence.unclear !== null && !evidence.unclear.includes(mark);
    // A till that writes one piece as "1,000" beside money as "12.50" would otherwise sell a thousand of it.
    const isDoubtful =
      shape?.decimal === undefined &&
      column === quantity &&
      thousandths &&
      isThousands &&
      markOf(evidence) === undefined;
    if ((mark === undefined && evidence.unclear !== null) || isDoubtful)
      question ??= `is "${evidence.unclear}" in the column "${heading(column)}" a number of thousands, or one with three decimals? State decimal ("." or ",") in sales-shapes.json.`;
    decimals.set(column, mark ?? only ?? ".");
  }
  const shown = shape?.decimal ?? only;
  return {
    styles: { decimals, decimal: shown ?? ("." as const), isDecimalShown: shown !== undefined },
    question,
  };
}

function markOf(evidence: ReturnType<typeof noEvidence>): DecimalMark | undefined {
  if (evidence.dot !== null) return ".";
  return evidence.comma === null ? undefined : ",";
}
