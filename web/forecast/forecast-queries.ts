import { queryOptions } from "@tanstack/react-query";
import { type Answer, answerOf, server } from "../api.ts";

export type ForecastAnswer = Answer<typeof server.reports.forecast.$get>;
export type ForecastRow = ForecastAnswer["days"][number];
export type PastDay = Answer<typeof server.reports.forecast.past.$get>["days"][number];

/** The week to come, drink by drink, and what such forecasts were worth. */
export const forecastQuery = queryOptions({
  queryKey: ["forecast"],
  queryFn: () => answerOf(server.reports.forecast.$get({ query: {} })),
});

/** Forecast against fact; of one drink where it is named. */
export function pastForecastQuery(what: string | null) {
  return queryOptions({
    queryKey: ["forecast", "past", what],
    queryFn: () => answerOf(server.reports.forecast.past.$get({ query: what === null ? {} : { what } })),
  });
}
