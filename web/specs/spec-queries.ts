import { queryOptions } from "@tanstack/react-query";
import type { CostReport } from "#engine/costing/report.ts";
import type { SpecTextLine } from "#engine/specs/text/entry.ts";
import { get, post } from "../api.ts";

export const costQuery = queryOptions({
  queryKey: ["cost"],
  queryFn: () => get<CostReport>("/reports/cost"),
});

/** Typed recipe text as lines, each with a message where it was not understood. */
export function readingQuery(text: string) {
  return queryOptions({
    queryKey: ["spec-reading", text],
    queryFn: () => post<SpecTextLine[]>("/specs/read", { text }),
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 60_000,
  });
}
