import { getConnInfo } from "@hono/node-server/conninfo";
import type { Context } from "hono";
import { deviceOf, sawDevice } from "#db/devices-repository.ts";
import { endSession, sawSession, sessionOf } from "#db/sessions-repository.ts";
import { sawToken, tokenOf } from "#db/tokens-repository.ts";
import type { Actor, Visitor } from "#server/people/actor.ts";
import { secretIn } from "#server/people/cookies.ts";
import type { Door } from "#server/people/door.ts";
import { secretHash } from "#server/people/secrets.ts";
import { isOver } from "#server/people/session-limits.ts";

/** Being seen is written down once in that time, not with every request. */
const SEEN_EVERY_MS = 60_000;

/** Who asks: by a token in the header, else by the session in the cookie; or, signed in by itself, whoever was given. */
export async function visitorOf(c: Context, door: Door, openAs: Actor | null): Promise<Visitor> {
  const address = addressOf(c);
  const nobody: Visitor = { actor: null, sessionId: null, device: null, address, readsOnly: false };
  const token = bearerIn(c);
  if (token !== undefined) return byToken(door, token, nobody);
  const device = await deviceIn(c, door);
  const signedIn = await bySession(c, door, { ...nobody, device });
  if (signedIn.actor !== null || openAs === null || !isAllowedOpen(openAs, address)) return signedIn;
  return { ...signedIn, actor: { ...openAs, address } };
}

function bearerIn(c: Context): string | undefined {
  return /^Bearer +(\S+)$/i.exec(c.req.header("authorization") ?? "")?.[1];
}

async function byToken({ db, now }: Door, secret: string, nobody: Visitor): Promise<Visitor> {
  const token = await tokenOf(db, secretHash(secret));
  if (token === undefined) return nobody;
  const at = now();
  if (isLongAgo(token.lastUsedAt, at)) await sawToken(db, token.id, at.toISOString());
  const { name, role, scope } = token;
  const actor: Actor = { personId: null, name, role, via: "token", address: nobody.address };
  return { ...nobody, actor, readsOnly: scope === "read" };
}

async function deviceIn(c: Context, { db, now }: Door) {
  const secret = secretIn(c, "device");
  const device = secret === undefined ? undefined : await deviceOf(db, secretHash(secret));
  if (device === undefined) return null;
  const at = now();
  if (isLongAgo(device.lastSeenAt, at)) await sawDevice(db, device.id, at.toISOString());
  return device;
}

async function bySession(c: Context, { db, now }: Door, visitor: Visitor): Promise<Visitor> {
  const secret = secretIn(c, "session");
  const found = secret === undefined ? undefined : await sessionOf(db, secretHash(secret));
  if (found === undefined) return visitor;
  const { session, person } = found;
  // A PIN counts together with its device alone, so its session does too.
  if (session.via === "pin" && session.deviceId !== visitor.device?.id) return visitor;
  const at = now();
  if (isOver(session, person.role, at.getTime())) {
    await endSession(db, session.id);
    return visitor;
  }
  if (isLongAgo(session.lastSeenAt, at)) await sawSession(db, session.id, at.toISOString());
  const { id, name, role } = person;
  const actor: Actor = { personId: id, name, role, via: session.via, address: visitor.address };
  return { ...visitor, actor, sessionId: session.id };
}

function isLongAgo(seenAt: string | null, now: Date): boolean {
  return seenAt === null || Math.abs(now.getTime() - Date.parse(seenAt)) >= SEEN_EVERY_MS;
}

/** The demo opens for this machine alone, wherever it listens. */
function isAllowedOpen({ via }: Actor, address: string): boolean {
  return via !== "demo" || address === HERE || /^(::1|(::ffff:)?127\.[\d.]+)$/.test(address);
}

/** Asked within the process, as tests do. */
const HERE = "this process";

/** Where a request comes from. Headers that name another address are not believed: anybody can send them. */
function addressOf(c: Context): string {
  const isOverNetwork = (c.env as { incoming?: unknown } | undefined)?.incoming !== undefined;
  return isOverNetwork ? (getConnInfo(c).remote.address ?? "unknown") : HERE;
}
