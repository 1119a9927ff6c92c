import { queryOptions } from "@tanstack/react-query";
import type { Venue } from "#engine/venue.ts";
import { answerOf, server } from "./api.ts";
import { keep, kept } from "./kept.ts";

// One entry a question to the server. Keys begin with the business word, so that a write can renew what it changed.

const VENUE_KEY = "ullage-venue";

/** The venue; the last one seen on this device stands in while the network is away. */
export const venueQuery = queryOptions({
  queryKey: ["venue"],
  queryFn: async (): Promise<Venue> => {
    const venue = await answerOf(server.venue.$get());
    keep(VENUE_KEY, venue);
    return venue;
  },
  placeholderData: lastSeenVenue,
  staleTime: 60_000,
});

export function lastSeenVenue(): Venue | undefined {
  return kept<Venue>(VENUE_KEY);
}

export const weekQuery = queryOptions({ queryKey: ["week"], queryFn: () => answerOf(server.week.$get()) });

export const catalogueQuery = queryOptions({
  queryKey: ["catalogue"],
  queryFn: () => answerOf(server.catalogue.$get()),
});

export const stockQuery = queryOptions({ queryKey: ["stock"], queryFn: () => answerOf(server.stock.$get()) });

export const countsQuery = queryOptions({
  queryKey: ["counts"],
  queryFn: () => answerOf(server.counts.$get()),
});

type Period = { count?: string | undefined; since?: string | undefined };

/** Variance between two counts; without names, the last two that are no spot counts. */
export function varianceQuery(period: Period) {
  return queryOptions({
    queryKey: ["variance", period],
    queryFn: () => answerOf(server.reports.variance.$get({ query: given(period) })),
  });
}

/** All that stands behind one item's variance. */
export function varianceItemQuery({ item, ...period }: Period & { item: string }) {
  return queryOptions({
    queryKey: ["variance", "item", item, period],
    queryFn: () => answerOf(server.reports.variance.item.$get({ query: { item, ...given(period) } })),
  });
}

/** Every item's unexplained use over all its counts. */
export const trendQuery = queryOptions({
  queryKey: ["variance", "trend"],
  queryFn: () => answerOf(server.reports.trend.$get({ query: {} })),
});

/** What to order; a budget in major units caps it. */
export function orderQuery({ budget }: { budget?: number | undefined }) {
  return queryOptions({
    queryKey: ["order", budget],
    queryFn: () =>
      answerOf(server.reports.order.$get({ query: budget === undefined ? {} : { budget: String(budget) } })),
  });
}

export const openOrdersQuery = queryOptions({
  queryKey: ["orders"],
  queryFn: () => answerOf(server.orders.$get()),
});

/** What the address says of a period, for the server; what it does not say, whole counts decide. */
export function given({ count, since }: Period): { count?: string; since?: string; whole: "true" } {
  return {
    whole: "true",
    ...(count === undefined ? {} : { count }),
    ...(since === undefined ? {} : { since }),
  };
}
