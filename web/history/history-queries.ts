import { queryOptions } from "@tanstack/react-query";
import { type Answer, answerOf, server } from "../api.ts";

export type HistoryAnswer = Answer<typeof server.history.$get>;
export type Act = HistoryAnswer["acts"][number];
export type Closing = Answer<typeof server.closing.$get>;

/** Which acts: of a thing by its name, and from one day of the venue's calendar to another. */
export type Wanted = { subject?: string | undefined; from?: string | undefined; to?: string | undefined };

/** Where reading goes on once a week was closed or reopened. */
export const CLOSED_WEEKS = "closed-weeks";

const PAGE = 60;

/** What was done, newest first; `before` goes on after the acts already shown. */
export function historyQuery(wanted: Wanted, before?: number) {
  const query = {
    ...given(wanted),
    limit: String(PAGE),
    ...(before === undefined ? {} : { before: String(before) }),
  };
  return queryOptions({
    queryKey: ["history", wanted, before],
    queryFn: () => answerOf(server.history.$get({ query })),
  });
}

/** The latest act of all, or about one thing. */
export function latestActQuery(subject: string | undefined) {
  return queryOptions({
    queryKey: ["history", "latest", subject],
    queryFn: () => answerOf(server.history.$get({ query: { ...given({ subject }), limit: "1" } })),
  });
}

export const closingQuery = queryOptions({
  queryKey: ["closing"],
  queryFn: () => answerOf(server.closing.$get()),
});

export function undoAct(seq: number) {
  return answerOf(server.history[":seq"].undo.$post({ param: { seq: String(seq) }, json: { reason: "" } }));
}

export function closeWeek(through: string) {
  return answerOf(server.closing.$post({ json: { through } }));
}

export function reopenWeek(reason: string) {
  return answerOf(server.closing.reopen.$post({ json: { reason } }));
}

function given(wanted: Wanted): Record<string, string> {
  const entries = Object.entries(wanted).filter(([, value]) => value !== undefined && value !== "");
  return Object.fromEntries(entries) as Record<string, string>;
}
