import { and, eq, isNull, lt, ne } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { devices, people, sessions, signInLinks } from "#db/schema/people.ts";
import { momentOf } from "#db/stored/transaction.ts";

// Being seen is no business act: nothing here counts as a change of the book, so no report is reckoned anew for it.

export type Session = typeof sessions.$inferSelect;

export async function startSession(
  { orm }: Db,
  session: Pick<Session, "secretHash" | "personId" | "deviceId" | "via">,
  now: string,
): Promise<number> {
  const at = momentOf({ now });
  const { lastInsertRowid } = orm
    .insert(sessions)
    .values({ ...session, startedAt: at, lastSeenAt: at })
    .run();
  return Number(lastInsertRowid);
}

/** A session with whose it is; undefined when it ended, its person may not sign in any more or its device was removed. */
export async function sessionOf({ orm }: Db, secretHash: string) {
  const found = orm
    .select({ session: sessions, person: people, removedAt: devices.removedAt })
    .from(sessions)
    .innerJoin(people, eq(people.id, sessions.personId))
    .leftJoin(devices, eq(devices.id, sessions.deviceId))
    .where(and(eq(sessions.secretHash, secretHash), eq(people.isActive, true)))
    .get();
  if (found === undefined || (found.session.via === "pin" && found.removedAt !== null)) return undefined;
  return { session: found.session, person: found.person };
}

export async function sawSession({ orm }: Db, id: number, now: string): Promise<void> {
  orm
    .update(sessions)
    .set({ lastSeenAt: momentOf({ now }) })
    .where(eq(sessions.id, id))
    .run();
}

export async function endSession({ orm }: Db, id: number): Promise<void> {
  orm.delete(sessions).where(eq(sessions.id, id)).run();
}

/** Signs somebody out everywhere, or everywhere but in one session. Gives how many ended. */
export async function endSessionsOf({ orm }: Db, personId: number, but = -1): Promise<number> {
  return orm
    .delete(sessions)
    .where(and(eq(sessions.personId, personId), ne(sessions.id, but)))
    .run().changes;
}

/** Signs everybody out, and shuts every link not used yet: for a database brought back, in which ended ones would be back. */
export async function endAllSessions({ orm }: Db): Promise<void> {
  orm.delete(sessions).run();
  orm.delete(signInLinks).where(isNull(signInLinks.usedAt)).run();
}

/** Forgets sessions that started before a moment: whatever their limits, they are over. */
export async function dropSessionsBefore({ orm }: Db, before: string): Promise<void> {
  orm
    .delete(sessions)
    .where(lt(sessions.startedAt, momentOf({ now: before })))
    .run();
}

/** Where people are signed in. */
export async function listSessions({ orm }: Db): Promise<Session[]> {
  return orm.select().from(sessions).all();
}
