import { NotFoundError } from "#db/errors.ts";
import {
  countWrongPin,
  forgetWrongPins,
  personNamed,
  personOf,
  type StoredPerson,
} from "#db/people-repository.ts";
import { dropSessionsBefore, endSession, endSessionsOf, startSession } from "#db/sessions-repository.ts";
import { foldName } from "#engine/name.ts";
import type { Visitor } from "#server/people/actor.ts";
import { kindFor } from "#server/people/choose-secret.ts";
import type { Door } from "#server/people/door.ts";
import { notSignedIn, TooManyTries } from "#server/people/refusal.ts";
import { isSecret, newSecret, secretHash } from "#server/people/secrets.ts";
import { LONGEST_SESSION_MS } from "#server/people/session-limits.ts";
import { accountTried, addressTried, type Tried } from "#server/people/throttle.ts";

/** A session that begins: its secret goes into the cookie and is kept nowhere else. */
export type NewSession = { secret: string; person: StoredPerson };

/** Consecutive wrong PINs after which it takes a new link; NIST SP 800-63B allows 100 at most, and four digits are few. */
export const WRONG_PINS_MOST = 20;

const WRONG_PASSWORD = "The name or the password is wrong.";
const WRONG_PIN = "That PIN is wrong.";

/** Signs somebody in by name and password. Throws 401 for a wrong one, the same for a name nobody has; 429 after many. */
export async function signInWithPassword(
  door: Door,
  { name, password }: { name: string; password: string },
  visitor: Visitor,
): Promise<NewSession> {
  const tried = await startTry(door, foldName(name), visitor);
  const person = await personNamed(door.db, name);
  const isRight = await isPasswordOf(door, person, password);
  if (person === undefined || !isRight) throw notSignedIn(WRONG_PASSWORD);
  await door.throttle.right(tried);
  return begin(door, person, "password", visitor);
}

/** Signs somebody in by PIN on a device of the bar. Throws 401 for a wrong one or another device, 429 after many. */
export async function signInWithPin(
  door: Door,
  { person: id, pin }: { person: number; pin: string },
  visitor: Visitor,
): Promise<NewSession> {
  if (visitor.device === null) {
    throw notSignedIn(
      "A PIN counts on the bar's own devices only; the owner or a manager can enrol this one.",
    );
  }
  const person = await personOf(door.db, id).catch(noneForNumber);
  const tried = await startTry(door, `PIN ${id}`, visitor);
  const wrong = person === undefined ? 0 : await countWrongPin(door.db, id);
  const isRight = await isPinOf(door, person, pin);
  if (wrong > WRONG_PINS_MOST) {
    throw notSignedIn(
      "This PIN was tried wrongly too often and counts no more. Ask the owner for a new link.",
    );
  }
  if (person === undefined || !isRight) throw notSignedIn(WRONG_PIN);
  await door.throttle.right(tried);
  await forgetWrongPins(door.db, id);
  return begin(door, person, "pin", visitor);
}

/** Begins a session for somebody who has proved to be it; the one this browser had ends. */
export async function begin(
  { db, now }: Door,
  person: StoredPerson,
  via: "password" | "pin",
  { device, sessionId }: Visitor,
): Promise<NewSession> {
  if (sessionId !== null) await endSession(db, sessionId);
  const at = now();
  await dropSessionsBefore(db, new Date(at.getTime() - LONGEST_SESSION_MS).toISOString());
  const secret = newSecret();
  const session = { secretHash: secretHash(secret), personId: person.id, deviceId: device?.id ?? null, via };
  await startSession(db, session, at.toISOString());
  return { secret, person };
}

/** Proves once more who somebody is, by the password or PIN they have. Throws 401, and 429 after many wrong ones. */
export async function proveAgain(door: Door, personId: number, old: string, visitor: Visitor): Promise<void> {
  const person = await personOf(door.db, personId);
  const tried = await startTry(door, person.folded, visitor);
  const kept = person.passwordHash ?? person.pinHash;
  if (kept === null || !(await isSecret(kept, old))) {
    const word = kindFor(person.role) === "pin" ? "PIN" : "password";
    throw notSignedIn(`The ${word} you have now is wrong.`);
  }
  await door.throttle.right(tried);
}

/** Ends this session, or all of whoever is signed in. Gives how many ended. */
export async function signOut(
  { db }: Door,
  { actor, sessionId }: Visitor,
  isEverywhere: boolean,
): Promise<number> {
  if (actor === null || actor.personId === null) return 0;
  if (isEverywhere) return endSessionsOf(db, actor.personId);
  if (sessionId === null) return 0;
  await endSession(db, sessionId);
  return 1;
}

/** Throws 429 where too many tries went wrong; else this one counts as wrong until it proves right. */
async function startTry(door: Door, account: string, { address, device }: Visitor): Promise<[Tried, Tried]> {
  const tried: [Tried, Tried] = [accountTried(account, device?.id), addressTried(address)];
  const seconds = await door.throttle.begin(tried, door.now().getTime());
  if (seconds > 0) throw new TooManyTries(seconds);
  return tried;
}

async function isPasswordOf(
  door: Door,
  person: StoredPerson | undefined,
  password: string,
): Promise<boolean> {
  const kept = person?.passwordHash ?? null;
  const isSame = await isSecret(kept ?? (await door.nobody()), password);
  return isSame && kept !== null && person?.isActive === true;
}

async function isPinOf(door: Door, person: StoredPerson | undefined, pin: string): Promise<boolean> {
  const kept = person?.pinHash ?? null;
  const isSame = await isSecret(kept ?? (await door.nobody()), pin);
  return isSame && kept !== null && person?.isActive === true;
}

function noneForNumber(error: unknown): undefined {
  if (!(error instanceof NotFoundError)) throw error;
}
