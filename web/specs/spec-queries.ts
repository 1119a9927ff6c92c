import { queryOptions } from "@tanstack/react-query";
import { answerOf, server } from "../api.ts";

export const costQuery = queryOptions({
  queryKey: ["cost"],
  queryFn: () => answerOf(server.reports.cost.$get({ query: {} })),
});

/** Typed recipe text as lines, each with a message where it was not understood. */
export function readingQuery(text: string) {
  return queryOptions({
    queryKey: ["spec-reading", text],
    queryFn: () => answerOf(server.specs.read.$post({ json: { text } })),
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 60_000,
  });
}
