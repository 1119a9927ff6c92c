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

export type MakeOrBuyReport = Answer<(typeof server.reports)["make-or-buy"]["$get"]>;

/** A prep made against bought; amounts in major money units. */
export function makeOrBuyQuery(choice: {
  prep: string;
  labour: number | undefined;
  bought: number | undefined;
  boughtLoss: number | undefined;
}) {
  const { prep, labour, bought, boughtLoss } = choice;
  return queryOptions({
    queryKey: ["make-or-buy", prep, labour, bought, boughtLoss],
    queryFn: () =>
      answerOf(
        server.reports["make-or-buy"].$get({
          query: {
            prep,
            ...(labour === undefined ? {} : { labour: String(labour) }),
            ...(bought === undefined ? {} : { bought: String(bought) }),
            ...(boughtLoss === undefined ? {} : { boughtLoss: String(boughtLoss) }),
          },
        }),
      ),
  });
}
