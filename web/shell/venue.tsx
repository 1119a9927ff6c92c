import { createContext, type ReactNode, useContext } from "react";
import type { Venue } from "#engine/venue.ts";

const VenueContext = createContext<Venue | null>(null);

export function VenueProvider({ venue, children }: { venue: Venue; children: ReactNode }) {
  return <VenueContext value={venue}>{children}</VenueContext>;
}

/** The venue whose book is open. Every screen is drawn only once there is one. */
export function useVenue(): Venue {
  const venue = useContext(VenueContext);
  if (venue === null) throw new Error("useVenue is called outside the shell.");
  return venue;
}
