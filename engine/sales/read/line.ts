import type { SalesShape } from "#engine/sales/read/shape.ts";

/** One line of a till: so many of one ring name, sold (or taken back) at one time. */
export type SaleLine = {
  /** YYYY-MM-DD: the trading day the sale belongs to. */
  businessDate: string;
  /** "YYYY-MM-DDTHH:MM:SSZ"; null when the file has no time. */
  at: string | null;
  /** As the till wrote it, trimmed, in Unicode form NFC. */
  ringName: string;
  /** As the till wrote them, trimmed, "" when none; child rows are joined with "; ". */
  modifiers: string;
  /** Negative for voids and refunds. */
  quantity: number;
  grossMinor: number | null;
  netMinor: number | null;
  /** Check, order or receipt number as text. */
  check: string | null;
  /** What tells lines of one check apart, where the file has it. */
  lineNo: string | null;
  /** Who rang it, as the till wrote it; only where the venue keeps it. It is no part of what a line is. */
  staff?: string | undefined;
};

/** A row that was not read, and why. `row` counts from 1 at the top of the file, the headings included. */
export type RefusedRow = { row: number; reason: string };

export type ReadSales = {
  lines: SaleLine[];
  refused: RefusedRow[];
  /** The shape the file was read with: as given, or as detected. */
  shape: SalesShape;
  /** Asked instead of reading, when the file can be read two ways or not at all; then `lines` is empty. */
  question: string | null;
  /** Rows that became a line or part of one (a modifier's row counts too). */
  linesRead: number;
  /** Rows passed over because they are no sales: titles, repeated headings, blank rows, totals. */
  rowsSkipped: number;
  /** What was decided or left out in a way that a person may want to know, a sentence each. */
  notices: string[];
};
