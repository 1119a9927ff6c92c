import { type Context, Hono } from "hono";
import { z } from "zod";
import { listPeople, personOf, setSecret } from "#db/people-repository.ts";
import { about, checked } from "#server/http.ts";
import { InputError } from "#server/input-error.ts";
import type { Actor, Visitor } from "#server/people/actor.ts";
import { kindFor } from "#server/people/choose-secret.ts";
import { giveSecret, takeSecret } from "#server/people/cookies.ts";
import type { Door } from "#server/people/door.ts";
import { chosenSecret, lookAtLink, useLink } from "#server/people/links.ts";
import { powersOf } from "#server/people/permissions.ts";
import { TooManyTries } from "#server/people/refusal.ts";
import {
  type NewSession,
  proveAgain,
  signInWithPassword,
  signInWithPin,
  signOut,
} from "#server/people/sign-in.ts";

const typed = z.string().max(500);
const link = z.string().min(1).max(200);

/** Signing in and out, and what the screens may know before anybody has. */
export function signInRoutes(door: Door) {
  return new Hono()
    .get("/", about("Who is signed in; on a device of the bar also whose PIN counts there"), async (c) =>
      c.json(await stateFor(door, c.get("visitor"))),
    )
    .post(
      "/password",
      about("Signs in by name and password"),
      checked("json", z.object({ name: typed, password: typed })),
      async (c) =>
        c.json(enter(c, await orWait(c, signInWithPassword(door, c.req.valid("json"), c.get("visitor"))))),
    )
    .post(
      "/pin",
      about("Signs in by PIN, on a device of the bar"),
      checked("json", z.object({ person: z.number().int().positive(), pin: typed })),
      async (c) =>
        c.json(enter(c, await orWait(c, signInWithPin(door, c.req.valid("json"), c.get("visitor"))))),
    )
    .post(
      "/link/look",
      about("What a one-time link is for; it is not used up"),
      checked("json", z.object({ link })),
      async (c) => c.json(await lookAtLink(door, c.req.valid("json").link)),
    )
    .post(
      "/link",
      about("Uses a one-time link: sets a password or PIN, and signs in where that counts"),
      checked("json", z.object({ link, name: z.string().trim().max(80).default(""), secret: typed })),
      async (c) => {
        const session = await useLink(door, c.req.valid("json"), c.get("visitor"));
        return c.json(session === null ? { name: null, role: null } : enter(c, session));
      },
    )
    .post("/out", about("Signs out here"), async (c) => {
      takeSecret(c, "session");
      return c.json({ ended: await signOut(door, c.get("visitor"), false) });
    })
    .post("/out-everywhere", about("Signs out on every device"), async (c) => {
      takeSecret(c, "session");
      return c.json({ ended: await signOut(door, c.get("visitor"), true) });
    })
    .post(
      "/change",
      about("Changes one's own password or PIN; every other session ends"),
      checked("json", z.object({ old: typed, secret: typed })),
      async (c) => {
        await orWait(c, changeOwn(door, c.get("actor"), c.req.valid("json"), c.get("visitor")));
        return c.json({ saved: true });
      },
    );
}

async function stateFor({ db }: Door, { actor, device }: Visitor) {
  const people = (await listPeople(db)).filter(({ isActive }) => isActive);
  const names = device === null ? [] : people.filter(({ pinHash }) => pinHash !== null);
  return {
    actor:
      actor === null
        ? null
        : { name: actor.name, role: actor.role, via: actor.via, powers: powersOf(actor.role) },
    device: device === null ? null : { name: device.name },
    names: names.map(({ id, name }) => ({ id, name })),
    /** Nobody has a password yet: the way in is the link in the terminal. */
    isFirst: actor === null && people.every(({ passwordHash }) => passwordHash === null),
  };
}

async function changeOwn(
  door: Door,
  { personId }: Actor,
  { old, secret }: { old: string; secret: string },
  visitor: Visitor,
): Promise<void> {
  if (personId === null) throw new InputError("Nobody signed in here, so there is no password to change.");
  await proveAgain(door, personId, old, visitor);
  const { name, role } = await personOf(door.db, personId);
  const chosen = await chosenSecret(door, kindFor(role), secret, name);
  const keepSession = visitor.sessionId;
  await setSecret(door.db, personId, chosen, {
    now: door.now().toISOString(),
    by: name,
    ...(keepSession === null ? {} : { keepSession }),
  });
}

function enter(c: Context, { secret, person }: NewSession) {
  giveSecret(c, "session", secret);
  return { name: person.name, role: person.role };
}

/** A refusal for too many tries says in the header, too, when to come again. */
async function orWait<T>(c: Context, act: Promise<T>): Promise<T> {
  try {
    return await act;
  } catch (error) {
    if (error instanceof TooManyTries) c.header("retry-after", String(error.seconds));
    throw error;
  }
}
