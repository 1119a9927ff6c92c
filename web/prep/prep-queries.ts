import { queryOptions } from "@tanstack/react-query";
import { type Answer, answerOf, server } from "../api.ts";

/** The day's plan; its moments are the venue's local time, "2026-11-25 14:00". */
export type PrepReport = Answer<typeof server.reports.prep.$get>;

export type BatchCard = Answer<typeof server.reports.prep.card.$get>;
export type PlannedBatch = PrepReport["batches"][number];
export type Discard = PrepReport["discard"][number];

/** What to make on a date; without one, on the day of the book's last entry. */
export function prepQuery(date: string | undefined) {
  return queryOptions({
    queryKey: ["prep", date ?? "last"],
    queryFn: () => answerOf(server.reports.prep.$get({ query: date === undefined ? {} : { for: date } })),
  });
}

/** One batch, scaled; without an amount, as much as the day's plan asks for. */
export function cardQuery({
  prep,
  date,
  make,
}: {
  prep: string;
  date: string | undefined;
  make: number | undefined;
}) {
  return queryOptions({
    queryKey: ["prep", "card", prep, date, make],
    queryFn: () =>
      answerOf(
        server.reports.prep.card.$get({
          query: {
            prep,
            ...(date === undefined ? {} : { for: date }),
            ...(make === undefined ? {} : { make: String(make) }),
          },
        }),
      ),
  });
}
