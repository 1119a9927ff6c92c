import { queryOptions } from "@tanstack/react-query";
import type { ColumnFinding } from "#engine/sales/read/columns.ts";
import type { RefusedRow, SaleLine } from "#engine/sales/read/line.ts";
import { type Answer, answerOf, server } from "../api.ts";

/** What a ring name may mean; `score` 0 to 100. */
export type Meaning = { name: string; kind: "drink" | "item"; score: number };

export type UnmappedName = {
  ringName: string;
  quantity: number;
  net: number;
  reason: "unknown" | "no-version";
  suggestions: Meaning[];
};

/** How a file would be read; nothing is written yet. */
export type SalesPreview = {
  file: string;
  columns: ColumnFinding[];
  question: string | null;
  /** The first lines as understood. */
  lines: SaleLine[];
  refused: RefusedRow[];
  change: { lines: number; new: number; known: number; daysTouched: string[] } | null;
  unmapped: UnmappedName[];
};

export type ImportAnswer = Answer<typeof server.sales.import.$post>;

export type SaleImport = {
  importId: number;
  file: string;
  importedAt: string;
  lines: number;
  from: string | null;
  to: string | null;
  refused: RefusedRow[];
  undoneAt: string | null;
};

export type SalesDay = { date: string; quantity: number; net: number };

export type Unmapped = {
  unmapped: UnmappedName[];
  modifiers: { modifier: string; quantity: number }[];
  /** Share of the sold quantity that the book knows, 0 to 1. */
  coverage: number;
};

export const importsQuery = queryOptions({
  queryKey: ["sales", "imports"],
  queryFn: async (): Promise<SaleImport[]> => answerOf(server.sales.imports.$get()),
});

export const daysQuery = queryOptions({
  queryKey: ["sales", "days"],
  queryFn: async (): Promise<SalesDay[]> => answerOf(server.sales.days.$get({ query: {} })),
});

export const unmappedQuery = queryOptions({
  queryKey: ["sales", "unmapped"],
  queryFn: async (): Promise<Unmapped> => answerOf(server.sales.unmapped.$get({ query: {} })),
});
