import { queryOptions } from "@tanstack/react-query";
import type { RefusedRow } from "#engine/sales/read/line.ts";
import { type Answer, answerOf, server } from "../api.ts";

/** How far the reading of one file is; see the server's ImportJob. */
export type SalesJob = Answer<(typeof server.sales.jobs)[":id"]["$get"]>;
/** A file as it would be read. */
export type SalesLook = NonNullable<SalesJob["look"]>;
/** What came of an import, or would. */
export type SalesReport = NonNullable<SalesJob["report"]>;
/** How a person wants a file read. */
export type ReadingWish = Parameters<(typeof server.sales.jobs)[":id"]["import"]["$post"]>[0]["json"];

export type RingNameRow = Answer<(typeof server)["ring-names"]["$get"]>[number];
export type UnmappedName = Answer<typeof server.sales.unmapped.$get>["unmapped"][number];
/** What a ring name may mean. */
export type Meaning = UnmappedName["suggestions"][number];

export type SaleImport = {
  importId: number;
  file: string;
  importedAt: string;
  importedBy: string;
  lines: number;
  from: string | null;
  to: string | null;
  refused: RefusedRow[];
  undoneAt: string | null;
};

export type SalesDay = { date: string; quantity: number; net: number };

const POLL_MS = 300;

/** A job, asked for again and again while it is under way. */
export function jobQuery(id: string) {
  return queryOptions({
    queryKey: ["sales", "jobs", id],
    queryFn: async (): Promise<SalesJob> => answerOf(server.sales.jobs[":id"].$get({ param: { id } })),
    refetchInterval: ({ state: { data } }) => (data === undefined || isUnderWay(data) ? POLL_MS : false),
    gcTime: 0,
  });
}

export function isUnderWay({ state }: Pick<SalesJob, "state">): boolean {
  return state === "reading" || state === "writing";
}

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
  queryFn: async () => answerOf(server.sales.unmapped.$get({ query: {} })),
});

export const ringNamesQuery = queryOptions({
  queryKey: ["sales", "ring-names"],
  queryFn: async (): Promise<RingNameRow[]> => answerOf(server["ring-names"].$get()),
});
