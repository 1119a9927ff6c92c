import { queryOptions } from "@tanstack/react-query";
import type { Unit } from "#engine/measure/units.ts";
import type { BatchCard } from "#engine/prep/batch-card.ts";
import type { PrepPlan } from "#engine/prep/plan.ts";
import { get } from "../api.ts";

/** The day's plan; its moments are the venue's local time, "2026-11-25 14:00". */
export type PrepReport = PrepPlan;

export type PlannedBatch = PrepPlan["batches"][number];
export type Discard = PrepPlan["discard"][number];

/** What to make on a date; without one, on the day of the book's last entry. */
export function prepQuery(date: string | undefined) {
  return queryOptions({
    queryKey: ["prep", date ?? "last"],
    queryFn: () => get<PrepReport>("/reports/prep", { for: date }),
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
    queryFn: () => get<BatchCard>("/reports/prep/card", { prep, for: date, make }),
  });
}

export type { BatchCard, Unit };
