import { type Context, Hono } from "hono";
import { z } from "zod";
import { addDevice, listDevices, removeDevice } from "#db/devices-repository.ts";
import { ConflictError } from "#db/errors.ts";
import { addPerson, changePerson, listPeople } from "#db/people-repository.ts";
import { ROLES } from "#db/schema/people.ts";
import { endSessionsOf, listSessions } from "#db/sessions-repository.ts";
import { addToken, listTokens, revokeToken } from "#db/tokens-repository.ts";
import { about, checked } from "#server/http.ts";
import { giveSecret } from "#server/people/cookies.ts";
import type { Door } from "#server/people/door.ts";
import { makeLink } from "#server/people/links.ts";
import { newSecret, secretHash } from "#server/people/secrets.ts";
import { isOver } from "#server/people/session-limits.ts";
import { WRONG_PINS_MOST } from "#server/people/sign-in.ts";
import { newToken } from "#server/people/tokens.ts";

const id = z.object({ id: z.coerce.number().int().positive() });
const name = z.string().trim().min(1, "Give a name.").max(80);
const role = z.enum(ROLES);

/** People, the devices of the bar, and tokens for scripts. Hashes never leave the server. */
export function peopleRoutes(door: Door) {
  const { db } = door;
  const doing = (c: Context) => ({ now: door.now().toISOString(), by: c.get("actor").name });
  return new Hono()
    .get("/people", about("Who may sign in, and where they are signed in"), async (c) =>
      c.json(await peopleFor(door)),
    )
    .post(
      "/people",
      about("Adds somebody; the answer holds the link to hand over, once"),
      checked("json", z.object({ name, role })),
      async (c) => {
        const personId = await addPerson(db, c.req.valid("json"), doing(c));
        return c.json({ id: personId, link: await makeLink(db, personId, { ...doing(c), now: door.now() }) });
      },
    )
    .post(
      "/people/:id",
      about("Changes somebody's role, or whether they may sign in; their sessions end"),
      checked("param", id),
      checked("json", z.object({ role: role.optional(), isActive: z.boolean().optional() })),
      async (c) => {
        await changePerson(db, c.req.valid("param").id, c.req.valid("json"), doing(c));
        return c.json({ saved: true });
      },
    )
    .post(
      "/people/:id/link",
      about("Makes a new one-time link for somebody; earlier ones no longer open"),
      checked("param", id),
      async (c) =>
        c.json({ link: await makeLink(db, c.req.valid("param").id, { ...doing(c), now: door.now() }) }),
    )
    .post(
      "/people/:id/sign-out",
      about("Signs somebody out on every device"),
      checked("param", id),
      async (c) => c.json({ ended: await endSessionsOf(db, c.req.valid("param").id) }),
    )
    .get("/devices", about("Devices on which a PIN counts, and which of them this is"), async (c) =>
      c.json(
        (await listDevices(db)).map(({ secretHash: _, ...device }) => ({
          ...device,
          isThis: device.id === c.get("visitor").device?.id,
        })),
      ),
    )
    .post(
      "/devices",
      about("Enrols the very device that asks; its secret goes into a cookie"),
      checked("json", z.object({ name })),
      async (c) => {
        const { device } = c.get("visitor");
        if (device !== null) throw new ConflictError(`This device is enrolled already, as ${device.name}.`);
        const secret = newSecret();
        const own = { name: c.req.valid("json").name, secretHash: secretHash(secret) };
        const deviceId = await addDevice(db, own, doing(c));
        giveSecret(c, "device", secret);
        return c.json({ id: deviceId });
      },
    )
    .post(
      "/devices/:id/remove",
      about("No PIN counts on a device any more; who is signed in there by PIN is out"),
      checked("param", id),
      async (c) => {
        await removeDevice(db, c.req.valid("param").id, doing(c));
        return c.json({ removed: true });
      },
    )
    .get("/tokens", about("Tokens that work, without their secrets"), async (c) =>
      c.json((await listTokens(db)).map(({ secretHash: _, folded: __, revokedAt: ___, ...token }) => token)),
    )
    .post(
      "/tokens",
      about("Makes a token for scripts; the answer holds its secret, once"),
      checked("json", z.object({ name, role, scope: z.enum(["read", "write"]) })),
      async (c) => {
        const secret = newToken();
        const tokenId = await addToken(
          db,
          { ...c.req.valid("json"), secretHash: secretHash(secret) },
          doing(c),
        );
        return c.json({ id: tokenId, token: secret });
      },
    )
    .post("/tokens/:id/revoke", about("A token works no more"), checked("param", id), async (c) => {
      await revokeToken(db, c.req.valid("param").id, doing(c));
      return c.json({ revoked: true });
    });
}

async function peopleFor({ db, now }: Door) {
  const nowMs = now().getTime();
  const sessions = await listSessions(db);
  return (await listPeople(db)).map(({ id, name, role, isActive, passwordHash, pinHash, wrongPins }) => ({
    id,
    name,
    role,
    isActive,
    /** False until their link was used. */
    canSignIn: passwordHash !== null || pinHash !== null,
    isPinStopped: pinHash !== null && wrongPins >= WRONG_PINS_MOST,
    sessions: sessions.filter((one) => one.personId === id && !isOver(one, role, nowMs)).length,
  }));
}
