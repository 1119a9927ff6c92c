import { queryOptions } from "@tanstack/react-query";
import type { Change } from "#engine/demand/changed-book.ts";
import { type Answer, answerOf, server } from "../api.ts";

export type WhatIfAnswer = Answer<(typeof server.reports)["what-if"]["$post"]>;
export type ReplayAnswer = Answer<typeof server.reports.replay.$get>;

/** What changes would do to the next two weeks; asked only when there are some, and never stored. */
export function whatIfQuery(changes: readonly Change[], days: number) {
  return queryOptions({
    queryKey: ["what-if", changes, days],
    queryFn: () => answerOf(server.reports["what-if"].$post({ json: { changes: [...changes], days } })),
    enabled: changes.length > 0,
    placeholderData: (previous: WhatIfAnswer | undefined) => previous,
  });
}

/** The last weeks ordered anew. */
export const replayQuery = queryOptions({
  queryKey: ["order", "replay"],
  queryFn: () => answerOf(server.reports.replay.$get({ query: {} })),
  staleTime: 600_000,
});
