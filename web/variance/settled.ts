import { queryOptions } from "@tanstack/react-query";
import { type Answer, answerOf, server } from "../api.ts";

/** Where reading goes on once a cause was settled or that was taken back. */
export const CAUSES_HEADING = "would-explain";

export type Settled = Answer<typeof server.causes.settled.$get>[number];

/** What was settled and holds, latest first. */
export const settledQuery = queryOptions({
  queryKey: ["variance", "settled"],
  queryFn: () => answerOf(server.causes.settled.$get()),
});

/** Takes back what was settled, and its correction with it. */
export function takeSettlementBack(id: number) {
  return answerOf(
    server.causes.settled[":id"]["take-back"].$post({ param: { id: String(id) }, json: { by: "" } }),
  );
}
