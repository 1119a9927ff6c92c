import { type QueryClient, queryOptions } from "@tanstack/react-query";
import { type Answer, answerOf, server } from "../api.ts";
import type { CardSize } from "./card-size.ts";

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

type CardChoice = {
  prep: string;
  date: string | undefined;
  /** Left out or "planned" without an amount: as much as the day's plan asks for. */
  size?: CardSize;
  make?: number | undefined;
  /** Which of the day's batches its labels begin with. */
  batchNo?: number;
};

/** One batch, scaled. */
export function cardQuery({ prep, date, size = { way: "planned" }, make, batchNo }: CardChoice) {
  const query = {
    prep,
    ...(date === undefined ? {} : { for: date }),
    ...sizeQuery(size, make),
    ...(batchNo === undefined ? {} : { batch: String(batchNo) }),
  };
  return queryOptions({
    queryKey: ["prep", "card", query],
    queryFn: () => answerOf(server.reports.prep.card.$get({ query })),
  });
}

function sizeQuery(size: CardSize, planned: number | undefined) {
  switch (size.way) {
    case "planned":
      return planned === undefined ? {} : { make: String(planned) };
    case "vessel":
      return { vessel: "true" as const };
    case "amount":
      return { make: String(size.make) };
    case "have":
      return { input: size.item, amount: String(size.amount) };
  }
}

/** After something was made or thrown out: no plan of before is shown again, not even for the blink of an eye. */
export async function renewAfterEntry(queryClient: QueryClient): Promise<void> {
  queryClient.removeQueries({ queryKey: ["prep"], type: "inactive" });
  await queryClient.invalidateQueries();
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
