import { useMutation, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import type { VenueSettings } from "#engine/venue.ts";
import { answerOf, server } from "../api.ts";
import { keep, kept } from "../kept.ts";
import { useNotify } from "../parts/Notice.tsx";
import { problemOfField } from "../parts/Problems.tsx";
import { venueQuery } from "../queries.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { changeWords, textAt } from "./setting-words.ts";
import { changedPlaces, heldAt, type Place, readSettings, settingsOf, type Typed } from "./settings.ts";

/** Before the places in what is sent. */
const NOW = "now.";

/** The place that the server means by a field of what was sent; "" for none. placeNamed("now.houseMl.dash") → "houseMl.dash". */
export function placeNamed(field: string): string {
  return field.startsWith(NOW) ? field.slice(NOW.length) : "";
}

export type Settings = ReturnType<typeof useSettings>;

/** What is typed, over the settings as they stood at the first key; it stays in this window until it is saved. */
type Draft = { pinned: VenueSettings | null; typed: Typed };

const KEPT = "ullage-venue-draft";
const NOTHING_TYPED: Draft = { pinned: null, typed: {} };

/**
 * The settings as they stand, what is typed over them, and the one act that saves both as a whole. From the first key on they
 * stand as they were then: what another saves meanwhile is noticed by the server, then shown beside what is typed.
 */
export function useSettings() {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const venue = useVenue();
  const [{ pinned, typed }, setDraft] = useState(() => kept<Draft>(KEPT, sessionStorage) ?? NOTHING_TYPED);
  const write = (draft: Draft) => {
    keep(KEPT, draft, sessionStorage);
    setDraft(draft);
  };
  const [wrong, setWrong] = useState<readonly Place[]>([]);
  const [meanwhile, setMeanwhile] = useState<readonly Place[]>([]);
  const base = pinned ?? settingsOf(venue);
  const { now, noNumbers } = readSettings(base, typed);
  const changed = changedPlaces(base, typed);
  const changes = changed
    .filter((place) => !noNumbers.includes(place))
    .map((place) => changeWords(place, base, now));
  const save = useMutation({
    mutationFn: () => answerOf(server.venue.settings.$post({ json: { was: base, now } })),
    onSuccess: async () => {
      notify({ text: say("venue.saved", { changes: changes.join("; ") }) });
      await queryClient.invalidateQueries();
      write(NOTHING_TYPED);
      setMeanwhile([]);
    },
    onError: async () => {
      const fresh = await queryClient.fetchQuery({ ...venueQuery, staleTime: 0 }).catch(() => null);
      if (fresh === null) return;
      const stands = settingsOf(fresh);
      write({ pinned: stands, typed });
      setMeanwhile(changed.filter((place) => heldAt(stands, place) !== heldAt(base, place)));
    },
  });
  const errorAt = (place: Place): string | undefined => {
    if (wrong.includes(place)) return say("venue.noNumber");
    if (meanwhile.includes(place)) return say("venue.meanwhile", { value: textAt(base, place) || "none" });
    return problemOfField(save.error, NOW + place);
  };
  return {
    base,
    changed,
    changes,
    save,
    /** What keeps it from being saved, for the place that is asked about. */
    errorAt,
    textOf: (place: Place) => typed[place] ?? textAt(base, place),
    type: (place: Place, text: string) => {
      write({ pinned: base, typed: { ...typed, [place]: text } });
      setWrong(wrong.filter((other) => other !== place));
    },
    submit: () => {
      setWrong(noNumbers);
      setMeanwhile([]);
      if (noNumbers.length > 0) return;
      if (changed.length === 0) notify({ text: say("venue.unchanged") });
      else save.mutate();
    },
    /** Leaves everything as it stands, and forgets what was typed. */
    drop: () => {
      write(NOTHING_TYPED);
      setWrong([]);
      setMeanwhile([]);
      save.reset();
    },
    wrong,
    meanwhile,
  };
}
