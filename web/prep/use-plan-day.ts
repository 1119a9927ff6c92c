import { useQuery } from "@tanstack/react-query";
import { todayAt } from "../moment.ts";
import { useVenue } from "../shell/venue.tsx";
import { dayToPlan } from "./prep-date.ts";
import { prepQuery } from "./prep-queries.ts";

/** The day that list and card are for: the one asked for, else the day to plan; undefined until the book has said where it ends. */
export function usePlanDay(asked: string | undefined) {
  const venue = useVenue();
  const { data: last, error, refetch } = useQuery({ ...prepQuery(undefined), enabled: asked === undefined });
  const planned = last === undefined ? undefined : dayToPlan({ today: todayAt(venue), bookDate: last.date });
  return { date: asked ?? planned, last, error, refetch };
}
