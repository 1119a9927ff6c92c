import type { ActName, Subject, Told } from "#db/history/acts.ts";
import { factWords } from "#db/history/fact-words.ts";
import { isEntryClosed } from "#db/history/past.ts";
import type { EntryFacts, EntryKind } from "#db/stored/entries.ts";
import { businessDateOf, localMinute } from "#engine/sales/read/clock.ts";
import type { ClosedPast, Touch } from "#engine/stock/closed-past.ts";
import { type Instant, toInstant } from "#engine/time.ts";
import type { Venue } from "#engine/venue.ts";

/** An entry as it was added: what held before it, and what holds after; null where nothing does. */
export type EntryChange = {
  [Kind in EntryKind]: {
    kind: Kind;
    id: number;
    replacesId: number | null;
    /** Of an entry that undoing added: whose state it brings back; null for none. */
    restores?: number | null;
    before: EntryFacts[Kind] | null;
    after: EntryFacts[Kind] | null;
  };
}[EntryKind];

const ENTERED: Record<EntryKind, ActName> = {
  count: "count entry",
  delivery: "delivery entered",
  batch: "batch entered",
  loss: "loss entered",
  transfer: "transfer entered",
};

type How = { now: string; reason?: string; venue: Venue };

/** Entries of one act as the history tells them; null when all of them had arrived before. */
export function tellEntries(entries: readonly EntryChange[], { now, reason, venue }: How): Told | null {
  const [first] = entries;
  if (first === undefined) return null;
  const [subject, ...others] = entries.flatMap(subjectsOf);
  if (subject === undefined) throw new Error(`A ${first.kind} is about nothing.`);
  return {
    act: actOf(first),
    subjects: [subject, ...others],
    summary: summaryOf(entries, venue),
    before: factsOf(entries, "before"),
    after: factsOf(entries, "after"),
    at: toInstant(Date.parse(now)),
    ...(reason === undefined ? {} : { reason }),
    mend: { entries: entries.map(({ before: _, after: __, ...entry }) => entry) },
    touches: entryTouches(entries, venue),
  };
}

/** A shelf that is counted again is a count entry all the same; of the others, a change is a correction. */
function actOf({ kind, before, after }: EntryChange): ActName {
  if (after === null) return "entry taken back";
  return before === null || kind === "count" ? ENTERED[kind] : "entry corrected";
}

function subjectsOf({ kind, before, after }: EntryChange): Subject[] {
  return [after, before].flatMap((fact) => (fact === null ? [] : subjectsOfFact(kind, fact)));
}

function subjectsOfFact(kind: EntryKind, fact: EntryFacts[EntryKind]): Subject[] {
  const about = fact as Partial<Record<"item" | "count" | "supplier" | "prep" | "what" | "unit", string>>;
  const { item, count, supplier, prep, what, unit } = about;
  return [
    ...(item === undefined ? [] : [{ kind: "item", name: item } as const]),
    ...(kind !== "count" || count === undefined ? [] : [{ kind: "count", name: count } as const]),
    ...(supplier === undefined ? [] : [{ kind: "supplier", name: supplier } as const]),
    ...(prep === undefined ? [] : [{ kind: "prep", name: prep } as const]),
    ...(what === undefined
      ? []
      : [{ kind: unit === "serve" ? "drink" : "item", name: what } as const satisfies Subject]),
  ];
}

const SHOWN = 3;

function summaryOf(entries: readonly EntryChange[], venue: Venue): string {
  const [first] = entries;
  const fact = first?.after ?? first?.before;
  if (first === undefined || fact === undefined || fact === null) return "";
  const about = first.kind === "count" ? `${(fact as EntryFacts["count"]).count}: ` : "";
  const shown = entries.slice(0, SHOWN).map(changeWords).join("; ");
  const more = entries.length > SHOWN ? `; and ${entries.length - SHOWN} more` : "";
  return `${about}${shown}${more}, dated ${localMinute(fact.at, venue)}`;
}

function changeWords(entry: EntryChange): string {
  const { kind, before, after } = entry;
  const words = (fact: EntryFacts[EntryKind]) => factWords(kind, fact as never);
  // That it was taken back is said by the act's own name.
  if (after === null) return before === null ? "" : words(before);
  return before === null ? words(after) : `${words(after)} (before: ${words(before)})`;
}

function factsOf(entries: readonly EntryChange[], side: "before" | "after"): unknown {
  const facts = entries.flatMap((entry) => entry[side] ?? []);
  return facts.length === 0 ? null : facts;
}

function entryTouches(entries: readonly EntryChange[], venue: Venue) {
  return (closed: ClosedPast): Touch[] =>
    entries.flatMap(({ kind, before, after }) =>
      [before, after].flatMap((fact) => {
        if (fact === null || !isEntryClosed(placed(kind, fact), closed, venue)) return [];
        return [{ what: `${NOUN[kind]} of ${factWords(kind, fact as never)}`, on: dateOf(fact, venue) }];
      }),
    );
}

const NOUN: Record<EntryKind, string> = {
  count: "count",
  delivery: "delivery",
  batch: "batch",
  loss: "loss",
  transfer: "transfer",
};

function placed(kind: EntryKind, fact: EntryFacts[EntryKind]): { at: Instant; count?: string } {
  return kind === "count" ? { at: fact.at, count: (fact as EntryFacts["count"]).count } : { at: fact.at };
}

function dateOf({ at }: { at: Instant }, venue: Venue): string {
  return businessDateOf(at, venue);
}
