import type { Understood } from "#engine/sales/read/layout.ts";
import type { SalesColumns, SalesShape } from "#engine/sales/read/shape.ts";

/** The shape a file was read with, complete enough to be kept in sales-shapes.json and read the next file with. */
export function shapeOf(
  base: SalesShape,
  delimiter: string | undefined,
  { headings, map, question, ...understood }: Pick<Understood, "headings" | "map" | "question" | "styles">,
): SalesShape {
  // What is still being asked must not be answered by the shape that goes with the question.
  const styles = question === null ? understood.styles : null;
  const columns: SalesColumns = { ...base.columns };
  if (map.businessDate !== undefined && map.date === undefined) delete columns.date;
  const isTwin = (heading: string): boolean => headings.filter((other) => other === heading).length > 1;
  const nameOf = (column: number): string => {
    const heading = headings[column] ?? "";
    return heading === "" || isTwin(heading) ? `#${column + 1}` : heading;
  };
  for (const [role, column] of Object.entries(map) as [keyof SalesColumns, number | number[]][]) {
    if (Array.isArray(column)) {
      const [first, ...more] = column.map(nameOf);
      if (first !== undefined) columns.modifiers = more.length === 0 ? first : [first, ...more];
    } else if (role !== "modifiers") columns[role] = nameOf(column);
  }
  return {
    ...base,
    ...(delimiter === undefined ? {} : { delimiter }),
    ...(styles?.isDecimalShown ? { decimal: styles.decimal } : {}),
    ...(styles?.isOrderUsed ? { dateOrder: styles.dateOrder } : {}),
    columns,
  };
}
