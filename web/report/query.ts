import { queryOptions } from "@tanstack/react-query";
import { type Answer, answerOf, server } from "../api.ts";
import type { Period } from "../variance/PeriodPicker.tsx";

export type OwnerReport = Answer<typeof server.reports.owner.$get>;

/** The owner's page between two counts; without names, the last two. */
export function ownerReportQuery({ count, since }: Period) {
  const query = { ...(count === undefined ? {} : { count }), ...(since === undefined ? {} : { since }) };
  return queryOptions({
    queryKey: ["variance", "owner", query],
    queryFn: () => answerOf(server.reports.owner.$get({ query })),
  });
}
