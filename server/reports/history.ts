import type { ActName } from "#db/history/acts.ts";
import { type Act, listHistory } from "#db/history-repository.ts";
import type { Db } from "#db/open.ts";
import { loadVenue } from "#db/stored/book.ts";
import { localMinute, localToInstant } from "#engine/sales/read/clock.ts";
import { addDays, type BusinessDate } from "#engine/time.ts";

export type HistoryChoice = {
  subject?: string | undefined;
  act?: ActName | undefined;
  /** Days of the venue's calendar, both included. */
  from?: BusinessDate | undefined;
  to?: BusinessDate | undefined;
  before?: number | undefined;
  limit?: number | undefined;
};

/** An act with the venue's time. */
export type ShownAct = Act & { atLocal: string };

const LIMIT = 100;

/** What was done, newest first, with the venue's time; `more` says that older acts were left out. */
export async function historyFor(
  db: Db,
  { from, to, limit = LIMIT, ...wanted }: HistoryChoice,
): Promise<{ acts: ShownAct[]; more: boolean }> {
  // Before a venue is set up, no clock but the world's is known.
  const clock = loadVenue(db) ?? { timeZone: "UTC" };
  const acts = await listHistory(db, {
    ...wanted,
    limit: limit + 1,
    from: from === undefined ? undefined : localToInstant(from, clock),
    to: to === undefined ? undefined : localToInstant(addDays(to, 1), clock),
  });
  const shown = acts.slice(0, limit).map((act) => ({ ...act, atLocal: localMinute(act.at, clock) }));
  return { acts: shown, more: acts.length > limit };
}
