import { queryOptions } from "@tanstack/react-query";
import type { NewPrep } from "#engine/specs/new-prep.ts";
import { type Answer, answerOf, server } from "../api.ts";

export const costQuery = queryOptions({
  queryKey: ["cost"],
  queryFn: () => answerOf(server.reports.cost.$get({ query: {} })),
});

/** Typed recipe text as lines, each with a message where it was not understood; `also` names items that are yet to come. */
export function readingQuery(text: string, also: readonly string[] = []) {
  return queryOptions({
    queryKey: ["spec-reading", text, also],
    queryFn: () => answerOf(server.specs.read.$post({ json: { text, also: [...also] } })),
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 60_000,
  });
}

export type NewPrepPreview = Answer<typeof server.preps.preview.$post>;

/** What a new prep would be; nothing is written. */
export function previewQuery(wanted: NewPrep) {
  return queryOptions({
    queryKey: ["new-prep", wanted],
    queryFn: () => answerOf(server.preps.preview.$post({ json: wanted })),
    gcTime: 60_000,
  });
}
