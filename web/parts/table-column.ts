import type { ReactNode } from "react";

export type CellValue = string | number | null;

/** One column of a DataTable. */
export type Column<Row> = {
  key: string;
  /** Empty over buttons: only who hears the table is told that they are its acts. */
  head: string;
  /** Beside the head, so that cells carry numbers alone: "ml", "€". */
  unit?: string;
  /** Numbers stand right and are written bare into files; text is made harmless there. */
  kind: "text" | "number";
  /** What is sorted, filtered, copied and written to files; null sorts last. */
  value: (row: Row) => CellValue;
  /** What is drawn, when that is more than the value. */
  show?: (row: Row) => ReactNode;
  /** On a phone: `lead` begins the first line, `main` ends it, `detail` (the rest) makes the second. */
  onPhone?: "lead" | "main" | "detail" | "hidden";
  /** Left out below 900 px, where a tablet held upright has no room for it. */
  isWideOnly?: boolean;
  /** For a column of buttons or drawings: neither sorted nor written to files. */
  isDrawn?: boolean;
  /** Only in copies and files, as the unit of each row. */
  isFileOnly?: boolean;
};
