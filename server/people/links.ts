import { NotFoundError } from "#db/errors.ts";
import { actingAs } from "#db/history/acting.ts";
import type { Db } from "#db/open.ts";
import { addLink, hasOwner, LINK_IS_SHUT, linkOpenTo, personOf, takeLink } from "#db/people-repository.ts";
import { InputError } from "#server/input-error.ts";
import { actingOf, type Role, type Visitor } from "#server/people/actor.ts";
import { kindFor, refuseWeakPassword, refuseWeakPin } from "#server/people/choose-secret.ts";
import type { Door } from "#server/people/door.ts";
import { hashSecret, newSecret, secretHash } from "#server/people/secrets.ts";
import { begin, type NewSession } from "#server/people/sign-in.ts";

const HOUR_MS = 3_600_000;
/** Long enough to be handed over at the next shift (common practice). */
const INVITATION_MS = 72 * HOUR_MS;
const FIRST_OWNER_MS = 24 * HOUR_MS;

export type Link = {
  /** To be put after the server's address; the part behind # never reaches a log. */
  path: string;
  expiresAt: string;
};

/** What a link is for: null as name for the first owner, who says it. */
export type LinkFor = { name: string | null; role: Role; kind: "password" | "pin" };

type Doing = { now: Date; by: string };

/** A new one-time link for somebody; earlier ones no longer open. Throws NotFoundError. */
export async function makeLink(db: Db, personId: number, { now, by }: Doing): Promise<Link> {
  return newLink(db, personId, INVITATION_MS, { now, by });
}

/** The link that names the first owner; null when there is one already. */
export async function firstOwnerLink(db: Db, doing: Doing): Promise<Link | null> {
  return (await hasOwner(db)) ? null : newLink(db, null, FIRST_OWNER_MS, doing);
}

async function newLink(db: Db, personId: number | null, lastsMs: number, { now, by }: Doing): Promise<Link> {
  const secret = newSecret();
  const expiresAt = new Date(now.getTime() + lastsMs).toISOString();
  await addLink(db, { secretHash: secretHash(secret), personId, expiresAt }, { now: now.toISOString(), by });
  return { path: `/welcome#${secret}`, expiresAt: `${expiresAt.slice(0, 19)}Z` };
}

/** Looks at a link without using it. Throws NotFoundError when it does not open (any more). */
export async function lookAtLink({ db, now }: Door, secret: string): Promise<LinkFor> {
  const open = await linkOpenTo(db, secretHash(secret), now().toISOString());
  if (open === undefined) throw new NotFoundError(LINK_IS_SHUT);
  const role = open.person?.role ?? "owner";
  return { name: open.person?.name ?? null, role, kind: kindFor(role) };
}

type Taking = { link: string; name: string; secret: string };

/**
 * Uses a link: sets the password or PIN, and signs in whoever has a password, or a PIN on one of the bar's devices; null
 * where the PIN is set and has to be used on one. Throws InputError for a weak choice, NotFoundError for a used link.
 */
export async function useLink(
  door: Door,
  { link, name, secret }: Taking,
  visitor: Visitor,
): Promise<NewSession | null> {
  const meant = await lookAtLink(door, link);
  const ownName = meant.name ?? name.trim();
  if (ownName === "") throw new InputError("Say your name; it stands beside what you enter.");
  const hashed = await chosenSecret(door, meant.kind, secret, ownName);
  const doing = { now: door.now().toISOString(), by: ownName };
  // Nobody is signed in yet, but it is whoever holds the link that acts, and not the terminal it was made at.
  const via = visitor.device === null ? "password" : meant.kind;
  const chooser = { personId: null, name: ownName, role: meant.role, via, address: visitor.address };
  const id = await actingAs(actingOf(chooser, visitor.device), () =>
    takeLink(door.db, { secretHash: secretHash(link), secret: hashed, ownerName: ownName }, doing),
  );
  if (meant.kind === "pin" && visitor.device === null) return null;
  return begin(door, await personOf(door.db, id), meant.kind, visitor);
}

/** A password or PIN that was chosen, checked and hashed. Throws InputError for a weak one. */
export async function chosenSecret(
  { hashing }: Pick<Door, "hashing">,
  kind: "password" | "pin",
  secret: string,
  name: string,
) {
  if (kind === "pin") {
    refuseWeakPin(secret);
    return { pinHash: await hashSecret(secret, hashing) };
  }
  refuseWeakPassword(secret, name);
  return { passwordHash: await hashSecret(secret, hashing) };
}
