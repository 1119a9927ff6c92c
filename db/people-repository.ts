import { and, asc, eq, isNull, ne, sql } from "drizzle-orm";
import { ConflictError, NotFoundError } from "#db/errors.ts";
import { type ActName, nothingPast, type Told } from "#db/history/acts.ts";
import type { Db } from "#db/open.ts";
import { people, type Role, sessions, signInLinks } from "#db/schema/people.ts";
import { type Doing, inTransaction, momentOf } from "#db/stored/transaction.ts";
import { foldName } from "#engine/name.ts";

/** Somebody who may sign in, with the hashes of what they sign in with. Never leaves the server. */
export type StoredPerson = typeof people.$inferSelect;

/** What a person chose to sign in with, hashed: one of the two, by role. */
export type SecretHash = { passwordHash: string } | { pinHash: string };

export async function listPeople({ orm }: Db): Promise<StoredPerson[]> {
  return orm.select().from(people).orderBy(asc(people.folded)).all();
}

export async function personNamed({ orm }: Db, name: string): Promise<StoredPerson | undefined> {
  return orm
    .select()
    .from(people)
    .where(eq(people.folded, foldName(name)))
    .get();
}

/** Throws NotFoundError for a number that nobody has. */
export async function personOf(db: Db, id: number): Promise<StoredPerson> {
  return heldPerson(db, id);
}

/** Whether somebody holds the keys: an active owner with a password. */
export async function hasOwner({ orm }: Db): Promise<boolean> {
  return ownersIn(orm).length > 0;
}

/** Adds somebody, who cannot sign in before a link was used. Throws ConflictError when the name is taken. */
export async function addPerson(
  db: Db,
  { name, role }: { name: string; role: Role },
  doing: Doing,
): Promise<number> {
  return inTransaction(db, () => {
    const id = insertPerson(db, { name, role, addedAt: momentOf(doing) });
    return { result: id, told: tell("person changed", name, doing, { after: { role }, what: "added" }) };
  });
}

/**
 * Changes what somebody may do, or whether they may sign in at all; their sessions end. Throws NotFoundError, and
 * ConflictError where it would leave nobody holding the keys.
 */
export async function changePerson(
  db: Db,
  id: number,
  change: { role?: Role | undefined; isActive?: boolean | undefined },
  doing: Doing,
): Promise<void> {
  inTransaction(db, () => {
    const { name, role, isActive } = heldPerson(db, id);
    const after = { role: change.role ?? role, isActive: change.isActive ?? isActive };
    const keepsKeys = after.isActive && after.role === "owner";
    if (!keepsKeys && isLastOwner(db, id)) {
      throw new ConflictError(`${name} is the last owner. Make somebody else an owner first.`);
    }
    db.orm
      .update(people)
      .set({ ...after, ...secretsKept(after.role) })
      .where(eq(people.id, id))
      .run();
    db.orm.delete(sessions).where(eq(sessions.personId, id)).run();
    // An open invitation was for the old role, or to somebody who has left.
    dropOpenLinks(db, id);
    const told = tell("permission changed", name, doing, { before: { role, isActive }, after });
    return { result: undefined, told };
  });
}

/** Sets what somebody signs in with; all their sessions but the one named end. */
export async function setSecret(
  db: Db,
  id: number,
  secret: SecretHash,
  doing: Doing & { keepSession?: number },
): Promise<void> {
  inTransaction(db, () => {
    const { name } = heldPerson(db, id);
    writeSecret(db, id, secret, doing.keepSession);
    return { result: undefined, told: tell("password changed", name, doing, { what: wordOf(secret) }) };
  });
}

/** Counts a wrong PIN and gives how many there were since the last right one. */
export async function countWrongPin({ orm }: Db, id: number): Promise<number> {
  const row = orm
    .update(people)
    .set({ wrongPins: sql`${people.wrongPins} + 1` })
    .where(eq(people.id, id))
    .returning({ wrongPins: people.wrongPins })
    .get();
  return row?.wrongPins ?? 0;
}

export async function forgetWrongPins({ orm }: Db, id: number): Promise<void> {
  orm
    .update(people)
    .set({ wrongPins: 0 })
    .where(and(eq(people.id, id), ne(people.wrongPins, 0)))
    .run();
}

/** A one-time link, of which the database knows the hash only; earlier ones for the same person no longer open. Throws NotFoundError. */
export async function addLink(
  db: Db,
  { secretHash, personId, expiresAt }: { secretHash: string; personId: number | null; expiresAt: string },
  doing: Doing,
): Promise<void> {
  inTransaction(db, () => {
    const name = personId === null ? "the first owner" : heldPerson(db, personId).name;
    dropOpenLinks(db, personId);
    db.orm
      .insert(signInLinks)
      .values({
        secretHash,
        personId,
        madeAt: momentOf(doing),
        expiresAt: momentOf({ now: expiresAt }),
      })
      .run();
    return { result: undefined, told: tell("sign-in changed", name, doing, { what: "one-time link made" }) };
  });
}

/** Whom a link lets in: a person, or null for the first owner. Undefined when it does not open (any more). */
export async function linkOpenTo(
  db: Db,
  secretHash: string,
  now: string,
): Promise<{ person: StoredPerson | null } | undefined> {
  const link = openLink(db, secretHash, now);
  if (link === undefined) return undefined;
  if (link.personId === null) return ownersIn(db.orm).length > 0 ? undefined : { person: null };
  const person = heldPerson(db, link.personId);
  return person.isActive ? { person } : undefined;
}

/**
 * Uses up a link: sets the secret of whom it was made for, or names the first owner. Gives the person's number. Throws
 * NotFoundError when the link does not open (any more), ConflictError when the owner's name is taken.
 */
export async function takeLink(
  db: Db,
  { secretHash, secret, ownerName }: { secretHash: string; secret: SecretHash; ownerName: string },
  doing: Doing,
): Promise<number> {
  return inTransaction(db, () => {
    const link = openLink(db, secretHash, doing.now);
    const isLate = link?.personId === null && ownersIn(db.orm).length > 0;
    if (link === undefined || isLate) throw new NotFoundError(LINK_IS_SHUT);
    db.orm
      .update(signInLinks)
      .set({ usedAt: momentOf(doing) })
      .where(eq(signInLinks.id, link.id))
      .run();
    const id =
      link.personId ?? insertPerson(db, { name: ownerName, role: "owner", addedAt: momentOf(doing) });
    const { name, isActive } = heldPerson(db, id);
    if (!isActive) throw new NotFoundError(LINK_IS_SHUT);
    writeSecret(db, id, secret);
    const told = tell("password changed", name, doing, { what: `${wordOf(secret)} by one-time link` });
    return { result: id, told };
  });
}

export const LINK_IS_SHUT =
  "This link was used already, is too old or was replaced. Ask the owner for a new one, or make one where the server runs: ullage people link NAME.";

function openLink({ orm }: Db, secretHash: string, now: string) {
  const link = orm
    .select()
    .from(signInLinks)
    .where(and(eq(signInLinks.secretHash, secretHash), isNull(signInLinks.usedAt)))
    .get();
  return link === undefined || link.expiresAt <= momentOf({ now }) ? undefined : link;
}

function dropOpenLinks({ orm }: Db, personId: number | null): void {
  const isTheirs = personId === null ? isNull(signInLinks.personId) : eq(signInLinks.personId, personId);
  orm
    .delete(signInLinks)
    .where(and(isTheirs, isNull(signInLinks.usedAt)))
    .run();
}

function insertPerson(
  db: Db,
  { name, role, addedAt }: Pick<StoredPerson, "name" | "role" | "addedAt">,
): number {
  const folded = foldName(name);
  const held = db.orm.select().from(people).where(eq(people.folded, folded)).get();
  if (held !== undefined) {
    throw new ConflictError(`Somebody is named ${held.name} already; names tell who entered what.`);
  }
  return Number(db.orm.insert(people).values({ name, folded, role, addedAt }).run().lastInsertRowid);
}

function writeSecret({ orm }: Db, id: number, secret: SecretHash, keepSession = -1): void {
  const none = { passwordHash: null, pinHash: null };
  orm
    .update(people)
    .set({ ...none, ...secret, wrongPins: 0 })
    .where(eq(people.id, id))
    .run();
  orm
    .delete(sessions)
    .where(and(eq(sessions.personId, id), ne(sessions.id, keepSession)))
    .run();
}

/** A password is no PIN: who changes between the kinds of role chooses anew. */
function secretsKept(role: Role): { passwordHash: null } | { pinHash: null } {
  return role === "owner" || role === "manager" ? { pinHash: null } : { passwordHash: null };
}

function heldPerson({ orm }: Db, id: number): StoredPerson {
  const held = orm.select().from(people).where(eq(people.id, id)).get();
  if (held === undefined) throw new NotFoundError(`Nobody has the number ${id}.`);
  return held;
}

function ownersIn(orm: Db["orm"]): StoredPerson[] {
  const isOwner = and(eq(people.role, "owner"), eq(people.isActive, true));
  return orm
    .select()
    .from(people)
    .where(isOwner)
    .all()
    .filter(({ passwordHash }) => passwordHash !== null);
}

function isLastOwner({ orm }: Db, id: number): boolean {
  const owners = ownersIn(orm);
  return owners.length === 1 && owners[0]?.id === id;
}

function wordOf(secret: SecretHash): string {
  return "pinHash" in secret ? "PIN set" : "password set";
}

type Telling = { what?: string; before?: unknown; after?: unknown };

function tell(act: ActName, name: string, doing: Doing, { what, before, after }: Telling): Told {
  return {
    act,
    subjects: [{ kind: "person", name }],
    summary: what === undefined ? name : `${name}: ${what}`,
    ...(before === undefined ? {} : { before }),
    ...(after === undefined ? {} : { after }),
    at: momentOf(doing),
    touches: nothingPast,
  };
}
