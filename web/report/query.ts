import { queryOptions } from "@tanstack/react-query";
import { type Answer, answerOf, server } from "../api.ts";
import { given } from "../queries.ts";
import type { Period } from "../variance/PeriodPicker.tsx";

export type OwnerReport = Answer<typeof server.reports.owner.$get>;

/** The owner's page between two counts; without names, the last two that are no spot counts. */
export function ownerReportQuery(period: Period) {
  return queryOptions({
    queryKey: ["variance", "owner", period],
    queryFn: () => answerOf(server.reports.owner.$get({ query: given(period) })),
  });
}
