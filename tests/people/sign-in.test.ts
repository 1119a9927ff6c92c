import { describe, expect, it } from "vitest";
import { people, sessions } from "#db/schema/people.ts";
import { createApp } from "#server/app.ts";
import { type Door, openDoor } from "#server/people/door.ts";
import { firstOwnerLink, makeLink } from "#server/people/links.ts";
import { hashSecret, isSecret, STRONG } from "#server/people/secrets.ts";
import { SESSION_LIMITS } from "#server/people/session-limits.ts";
import { signInWithPassword, WRONG_PINS_MOST } from "#server/people/sign-in.ts";
import { type Answer, aDoor, CHEAP, PASSWORD, PIN, type TestBar } from "#tests/people/door.ts";

const HOUR_MS = 3_600_000;

function said({ body }: Answer): string {
  return (body as { problems: { message: string }[] }).problems.map(({ message }) => message).join(" ");
}

/** The secret of a link: what stands behind its #. */
function secretOf(link: { path: string } | null): string {
  return link?.path.split("#")[1] ?? "";
}

describe("the first owner", () => {
  it("opens the link of the terminal once, and holds the keys from then on", async () => {
    const bar = await aDoor();
    const link = secretOf(await firstOwnerLink(bar.db, { now: bar.now(), by: "terminal" }));
    const ines = bar.browser();
    expect((await ines.get("/api/sign-in")).body).toMatchObject({ actor: null, isFirst: true });
    expect((await ines.post("/api/sign-in/link/look", { link })).body).toEqual({
      name: null,
      role: "owner",
      kind: "password",
    });
    const typed = { link, name: "Ines", secret: PASSWORD };
    expect((await ines.post("/api/sign-in/link", typed)).body).toEqual({ name: "Ines", role: "owner" });
    expect((await ines.get("/api/sign-in")).body).toMatchObject({ actor: { name: "Ines" }, isFirst: false });
    const second = await bar.browser().post("/api/sign-in/link", { ...typed, name: "Mallory" });
    expect(second.status).toBe(404);
    expect(said(second)).toContain("was used already");
    expect(await firstOwnerLink(bar.db, { now: bar.now(), by: "terminal" })).toBeNull();
  });

  it("need not come first: a manager with a password finds the way to sign in, in a book that nobody owns yet", async () => {
    const bar = await aDoor();
    await bar.add("Mara", "manager");
    expect((await bar.browser().get("/api/sign-in")).body).toMatchObject({ actor: null, isFirst: false });
    const mara = bar.browser();
    const entered = await mara.post("/api/sign-in/password", { name: "Mara", password: PASSWORD });
    expect(entered.body).toMatchObject({ name: "Mara", role: "manager" });
  });

  it("stands in the history as who chose the password, and not as the terminal that gave the link", async () => {
    const bar = await aDoor();
    const link = secretOf(await firstOwnerLink(bar.db, { now: bar.now(), by: "terminal" }));
    const ines = bar.browser();
    await ines.post("/api/sign-in/link", { link, name: "Ines", secret: PASSWORD });
    const { body } = await ines.get("/api/history");
    const { acts } = body as { acts: { who: string; via: string }[] };
    expect(acts[0]).toMatchObject({ who: "Ines", via: "screen" });
    expect(acts.slice(1).map(({ via }) => via)).toEqual(["terminal", "terminal"]);
  });

  it("cannot use a link that is a day old, or one that a newer one replaced", async () => {
    const bar = await aDoor();
    const old = secretOf(await firstOwnerLink(bar.db, { now: bar.now(), by: "terminal" }));
    const newer = secretOf(await firstOwnerLink(bar.db, { now: bar.now(), by: "terminal" }));
    const take = (link: string) =>
      bar.browser().post("/api/sign-in/link", { link, name: "Ines", secret: PASSWORD });
    expect((await take(old)).status).toBe(404);
    bar.wait(24 * HOUR_MS);
    expect((await take(newer)).status).toBe(404);
  });

  it.each([
    ["short", "has 5 characters"],
    ["Ines-2026-2026", "your own name"],
    ["password123", "first ones tried"],
    ["P@ssw0rd2026!", "first ones tried"],
    ["0123456789", "first ones tried"],
    ["aaaaaaaaaaaa", "first ones tried"],
    ["QwertyUiop!!", "first ones tried"],
  ])("may not choose %s, and the link stays good", async (secret, why) => {
    const bar = await aDoor();
    const link = secretOf(await firstOwnerLink(bar.db, { now: bar.now(), by: "terminal" }));
    const refused = await bar.browser().post("/api/sign-in/link", { link, name: "Ines", secret });
    expect(refused.status).toBe(422);
    expect(said(refused)).toContain(why);
    expect((await bar.browser().post("/api/sign-in/link/look", { link })).status).toBe(200);
  });
});

describe("a password", () => {
  it("is refused in the same words whether or not the name exists", async () => {
    const bar = await aDoor();
    await bar.add("Ines", "owner");
    const wrong = await bar.browser().post("/api/sign-in/password", { name: "Ines", password: "x" });
    const nobody = await bar.browser().post("/api/sign-in/password", { name: "Nobody", password: "x" });
    expect([wrong.status, nobody.status]).toEqual([401, 401]);
    expect(said(wrong)).toBe(said(nobody));
  });

  it("is compared with a hash of the same cost for a name that nobody has, so that both take as long", async () => {
    const bar = await aDoor();
    await bar.add("Ines", "owner");
    const door = openDoor({ db: bar.db, now: bar.now, hashing: STRONG });
    const compared: string[] = [];
    const watched: Door = {
      ...door,
      nobody: async () => {
        const kept = await door.nobody();
        compared.push(kept);
        return kept;
      },
    };
    const visitor = { actor: null, sessionId: null, device: null, address: "x", readsOnly: false };
    const guess = (name: string) =>
      signInWithPassword(watched, { name, password: "x" }, visitor).catch(({ status }) => status);
    expect(await guess("Ines")).toBe(401);
    expect(compared).toEqual([]);
    expect(await guess("Nobody")).toBe(401);
    expect(compared).toHaveLength(1);
    expect(compared[0]).toMatch(/^\$argon2id\$v=19\$m=65536,t=3,p=4\$/);
  });

  it("is kept as argon2id of no less than OWASP's least cost, and in no other form", async () => {
    // OWASP, Password Storage Cheat Sheet: argon2id with at least 19 MiB, 2 passes, 1 lane.
    expect(STRONG.memoryCost).toBeGreaterThanOrEqual(19 * 1024);
    expect(STRONG.timeCost).toBeGreaterThanOrEqual(2);
    expect(await hashSecret("x", STRONG)).toMatch(/^\$argon2id\$v=19\$m=65536,t=3,p=4\$/);
    const bar = await aDoor();
    await bar.signedIn("Ines", "owner");
    const rows = JSON.stringify([
      bar.db.orm.select().from(people).all(),
      bar.db.orm.select().from(sessions).all(),
    ]);
    expect(rows).not.toContain(PASSWORD);
  });

  it("works in either spelling of one text", async () => {
    const kept = await hashSecret("café corkscrew", { memoryCost: 8, timeCost: 1, parallelism: 1 });
    expect(await isSecret(kept, "cafe\u0301 corkscrew")).toBe(true);
  });

  it("makes guessing slow, says for how long, and leaves the right one alone after the wait", async () => {
    const bar = await aDoor();
    await bar.add("Ines", "owner");
    const guess = (password: string) =>
      bar.browser().post("/api/sign-in/password", { name: "Ines", password });
    for (let time = 0; time < 4; time += 1) expect((await guess("wrong")).status).toBe(401);
    const waits: number[] = [];
    for (let time = 0; time < 4; time += 1) {
      const refused = await guess(PASSWORD);
      expect(refused.status).toBe(429);
      const seconds = Number(refused.headers.get("retry-after"));
      expect(said(refused)).toMatch(/Wait \d+ seconds/);
      waits.push(seconds);
      bar.wait(seconds * 1000);
      expect((await guess("wrong")).status).toBe(401);
    }
    expect(waits).toEqual([5, 10, 20, 40]);
    bar.wait(15 * 60_000);
    expect((await guess(PASSWORD)).status).toBe(200);
    expect((await guess("wrong")).status).toBe(401);
  });

  it("is as slow to guess after the server was started anew, and nowhere is written what was typed", async () => {
    const bar = await aDoor();
    const typed = { name: "three bent corkscrews", password: "wrong" };
    for (let time = 0; time < 5; time += 1) await bar.browser().post("/api/sign-in/password", typed);
    const restarted = createApp({ db: bar.db, now: bar.now, webFolder: "/nowhere", hashing: CHEAP });
    const ask = () =>
      restarted.request("http://localhost:4680/api/sign-in/password", {
        method: "POST",
        headers: { "content-type": "application/json", "sec-fetch-site": "same-origin" },
        body: JSON.stringify(typed),
      });
    expect((await ask()).status).toBe(429);
    bar.wait(5_000);
    expect((await ask()).status).toBe(401);
    const kept = bar.db.sqlite.prepare("select key_hash, times from sign_in_tries order by times").all();
    expect(kept).toEqual([
      { key_hash: expect.stringMatching(/^[0-9a-f]{64}$/), times: 5 },
      { key_hash: expect.stringMatching(/^[0-9a-f]{64}$/), times: 5 },
    ]);
    // A day later all is forgotten, and goes with the next try.
    bar.wait(25 * HOUR_MS);
    await bar.browser().post("/api/sign-in/password", { ...typed, name: "Nobody" });
    expect(bar.db.sqlite.prepare("select max(times) from sign_in_tries").pluck().get()).toBe(1);
  });

  it("cannot be guessed by many tries at once", async () => {
    const bar = await aDoor();
    await bar.add("Ines", "owner");
    const tries = Array.from({ length: 30 }, () =>
      bar.browser().post("/api/sign-in/password", { name: "Ines", password: "wrong" }),
    );
    const statuses = (await Promise.all(tries)).map(({ status }) => status);
    expect(statuses.filter((status) => status === 401)).toHaveLength(4);
  });

  it("is slow to guess over many names from one address, too", async () => {
    const bar = await aDoor();
    const guess = (name: string) => bar.browser().post("/api/sign-in/password", { name, password: "wrong" });
    const statuses: number[] = [];
    for (let at = 0; at < 25; at += 1) statuses.push((await guess(`Somebody ${at}`)).status);
    expect(statuses.filter((status) => status === 401)).toHaveLength(20);
    expect(statuses.at(-1)).toBe(429);
  });

  it("that a stranger tries elsewhere keeps nobody out on the bar's own device", async () => {
    const bar = await aDoor();
    await bar.add("Ines", "owner");
    for (let time = 0; time < 6; time += 1)
      await bar.browser().post("/api/sign-in/password", { name: "Ines", password: "wrong" });
    const own = bar.browser({ isEnrolled: true });
    expect((await own.post("/api/sign-in/password", { name: "Ines", password: PASSWORD })).status).toBe(200);
  });

  it("is changed by whoever has it, and every other session ends", async () => {
    const bar = await aDoor();
    const here = await bar.signedIn("Ines", "owner");
    const there = bar.browser();
    await there.post("/api/sign-in/password", { name: "Ines", password: PASSWORD });
    const secret = "four bent corkscrews";
    expect((await here.post("/api/sign-in/change", { old: "wrong", secret })).status).toBe(401);
    expect((await here.post("/api/sign-in/change", { old: PASSWORD, secret })).status).toBe(200);
    expect((await here.get("/api/people")).status).toBe(200);
    expect((await there.get("/api/people")).status).toBe(401);
  });
});

describe("a PIN", () => {
  it("counts on a device of the bar and nowhere else", async () => {
    const bar = await aDoor();
    const person = await bar.add("Kit", "counter");
    const elsewhere = await bar.browser().post("/api/sign-in/pin", { person, pin: PIN });
    expect(elsewhere.status).toBe(401);
    expect(said(elsewhere)).toContain("own devices only");
    const phone = bar.browser({ isEnrolled: true });
    expect((await phone.post("/api/sign-in/pin", { person, pin: PIN })).status).toBe(200);
    // The session leaves the device no more than the PIN does.
    const stolen = bar.browser();
    stolen.cookies.set("ullage-session-4680", phone.cookies.get("ullage-session-4680") ?? "");
    expect((await stolen.get("/api/week")).status).toBe(401);
  });

  it("shows the names of those who have one on a device of the bar alone", async () => {
    const bar = await aDoor();
    const id = await bar.add("Kit", "counter");
    await bar.add("Ines", "owner");
    expect((await bar.browser().get("/api/sign-in")).body).toMatchObject({ device: null, names: [] });
    expect((await bar.browser({ isEnrolled: true }).get("/api/sign-in")).body).toMatchObject({
      device: { name: "Bar phone" },
      names: [{ id, name: "Kit" }],
    });
  });

  it("counts no more on a device that was removed, and whoever was in by it is out", async () => {
    const bar = await aDoor();
    const owner = await bar.signedIn("Ines", "owner");
    const kit = await bar.signedIn("Kit", "counter");
    const [device] = (await owner.get("/api/devices")).body as { id: number }[];
    await owner.post(`/api/devices/${device?.id}/remove`);
    expect((await kit.get("/api/counts")).status).toBe(401);
    expect((await kit.post("/api/sign-in/pin", { person: 1, pin: PIN })).status).toBe(401);
  });

  it("is stopped for good after too many wrong ones in a row, until a new link sets another", async () => {
    const bar = await aDoor();
    const person = await bar.add("Kit", "counter");
    const phone = bar.browser({ isEnrolled: true });
    const tap = (pin: string) => phone.post("/api/sign-in/pin", { person, pin });
    for (let time = 0; time < WRONG_PINS_MOST; time += 1) {
      bar.wait(HOUR_MS);
      expect((await tap("0001")).status).toBe(401);
    }
    bar.wait(HOUR_MS);
    const stopped = await tap(PIN);
    expect(stopped.status).toBe(401);
    expect(said(stopped)).toContain("counts no more");
    const link = secretOf(await makeLink(bar.db, person, { now: bar.now(), by: "test" }));
    expect((await phone.post("/api/sign-in/link", { link, secret: "8264" })).body).toMatchObject({
      name: "Kit",
    });
    expect((await phone.get("/api/counts/sheet")).status).toBe(404);
  });

  it.each(["123", "123456789", "12ab", "1234", "9876", "0000", "1212", "1987", "2580"])(
    "may not be %s",
    async (secret) => {
      const bar = await aDoor();
      const person = await bar.add("Kit", "counter");
      const link = secretOf(await makeLink(bar.db, person, { now: bar.now(), by: "test" }));
      expect((await bar.browser().post("/api/sign-in/link", { link, secret })).status).toBe(422);
    },
  );

  it("set by a link on somebody's own phone signs nobody in there", async () => {
    const bar = await aDoor();
    const person = await bar.add("Kit", "counter");
    const link = secretOf(await makeLink(bar.db, person, { now: bar.now(), by: "test" }));
    const own = bar.browser();
    expect((await own.post("/api/sign-in/link", { link, secret: "8264" })).body).toEqual({
      name: null,
      role: null,
    });
    expect((await own.get("/api/week")).status).toBe(401);
  });
});

describe("a session", () => {
  it.each(["owner", "manager", "counter", "prep"] as const)(
    "of %s ends when it is left alone for its time, and at its end however busy",
    async (role) => {
      const bar = await aDoor();
      const { idleMs, absoluteMs } = SESSION_LIMITS[role];
      const isIn = async (own: Awaited<ReturnType<TestBar["signedIn"]>>) =>
        (await own.get("/api/sign-in")).body as { actor: unknown };
      const left = await bar.signedIn("Left", role);
      bar.wait(idleMs - 1000);
      expect((await isIn(left)).actor).not.toBeNull();
      bar.wait(idleMs);
      expect((await isIn(left)).actor).toBeNull();
      const busy = await bar.signedIn("Busy", role);
      let spentMs = 0;
      while (spentMs + idleMs / 2 < absoluteMs) {
        bar.wait(idleMs / 2);
        spentMs += idleMs / 2;
        expect((await isIn(busy)).actor).not.toBeNull();
      }
      bar.wait(idleMs / 2);
      expect((await isIn(busy)).actor).toBeNull();
    },
  );

  it("lies in a cookie that no script reads, that no other site sends, and over TLS under a name bound to its host", async () => {
    const bar = await aDoor();
    await bar.add("Ines", "owner");
    const enter = async (url: string) => {
      const { headers } = await bar
        .browser({ url })
        .post("/api/sign-in/password", { name: "Ines", password: PASSWORD });
      return headers.getSetCookie().join();
    };
    expect(await enter("http://localhost:4680")).toMatch(
      /^ullage-session-4680=[\w-]{43}; Max-Age=50400; Path=\/; HttpOnly; SameSite=Strict$/,
    );
    expect(await enter("https://localhost")).toMatch(
      /^__Host-ullage-session=[\w-]{43}; Max-Age=50400; Path=\/; HttpOnly; Secure; SameSite=Strict$/,
    );
  });

  it("leaves nothing of what was seen in the cache of a shared device", async () => {
    const bar = await aDoor();
    const own = await bar.signedIn("Ines", "owner");
    for (const path of ["/api/people", "/api/sign-in", "/api/week"])
      expect((await own.get(path)).headers.get("cache-control")).toBe("no-store");
  });

  it("has a new secret at each sign-in, and the one before is over", async () => {
    const bar = await aDoor();
    const own = await bar.signedIn("Ines", "owner");
    const before = own.cookies.get("ullage-session-4680") ?? "";
    await own.post("/api/sign-in/password", { name: "Ines", password: PASSWORD });
    expect(own.cookies.get("ullage-session-4680")).not.toBe(before);
    const old = bar.browser();
    old.cookies.set("ullage-session-4680", before);
    expect((await old.get("/api/people")).status).toBe(401);
  });

  it("ends here, or everywhere, when one signs out", async () => {
    const bar = await aDoor();
    const here = await bar.signedIn("Ines", "owner");
    const there = bar.browser();
    await there.post("/api/sign-in/password", { name: "Ines", password: PASSWORD });
    expect((await here.post("/api/sign-in/out")).body).toEqual({ ended: 1 });
    expect(here.cookies.size).toBe(0);
    expect((await there.get("/api/people")).status).toBe(200);
    await here.post("/api/sign-in/password", { name: "Ines", password: PASSWORD });
    expect((await here.post("/api/sign-in/out-everywhere")).body).toEqual({ ended: 2 });
    expect((await there.get("/api/people")).status).toBe(401);
  });

  it("ends when its person is shut out or gets another role", async () => {
    const bar = await aDoor();
    const owner = await bar.signedIn("Ines", "owner");
    const manager = await bar.signedIn("Rui", "manager");
    const rui = ((await owner.get("/api/people")).body as { id: number; name: string }[]).find(
      ({ name }) => name === "Rui",
    );
    await owner.post(`/api/people/${rui?.id}`, { isActive: false });
    expect((await manager.get("/api/devices")).status).toBe(401);
    const again = await bar.browser().post("/api/sign-in/password", { name: "Rui", password: PASSWORD });
    expect(again.status).toBe(401);
  });

  it("does not serve another site's page, nor a program that brings a person's cookie", async () => {
    const bar = await aDoor();
    const own = await bar.signedIn("Ines", "owner");
    const add = (headers: Record<string, string>) =>
      own.post("/api/people", { name: `Somebody ${Object.values(headers)}`, role: "prep" }, headers);
    for (const site of ["cross-site", "same-site", "none"]) {
      expect((await add({ "sec-fetch-site": site })).status).toBe(403);
    }
    expect((await add({ "sec-fetch-site": "same-origin" })).status).toBe(200);
  });

  it("of an older browser is known by its origin", async () => {
    const bar = await aDoor();
    const own = await bar.signedIn("Ines", "owner");
    const { isFromOwnPages } = await import("#server/people/own-site.ts");
    const from = (headers: Record<string, string>, hasCookie = true) =>
      isFromOwnPages(
        {
          req: { method: "POST", url: "https://bar.test:4680/x", header: (name: string) => headers[name] },
        } as never,
        { hasCookie },
      );
    expect(from({ origin: "https://bar.test:4680" })).toBe(true);
    expect(from({ origin: "https://bar.test" })).toBe(false);
    expect(from({ origin: "null" })).toBe(false);
    expect(from({})).toBe(false);
    expect(from({}, false)).toBe(true);
    expect((await own.get("/api/people", { "sec-fetch-site": "cross-site" })).status).toBe(200);
  });
});

describe("people", () => {
  it("keep at least one owner", async () => {
    const bar = await aDoor();
    const owner = await bar.signedIn("Ines", "owner");
    const refused = await owner.post("/api/people/1", { role: "manager" });
    expect(refused.status).toBe(422);
    expect(said(refused)).toContain("last owner");
    await bar.add("Rui", "owner");
    expect((await owner.post("/api/people/1", { isActive: false })).status).toBe(200);
  });

  it("are added with a link to hand over, and nobody can have a name twice", async () => {
    const bar = await aDoor();
    const owner = await bar.signedIn("Ines", "owner");
    const added = (await owner.post("/api/people", { name: "Rui", role: "manager" })).body as {
      link: { path: string };
    };
    const rui = bar.browser();
    expect(
      (await rui.post("/api/sign-in/link", { link: secretOf(added.link), secret: PASSWORD })).body,
    ).toEqual({ name: "Rui", role: "manager" });
    expect((await owner.post("/api/people", { name: " rui ", role: "prep" })).status).toBe(422);
  });

  it("who lose an invitation to another role do not get in by the old one", async () => {
    const bar = await aDoor();
    const owner = await bar.signedIn("Ines", "owner");
    const { id, link } = (await owner.post("/api/people", { name: "Rui", role: "manager" })).body as {
      id: number;
      link: { path: string };
    };
    await owner.post(`/api/people/${id}`, { role: "prep" });
    expect((await bar.browser().post("/api/sign-in/link/look", { link: secretOf(link) })).status).toBe(404);
  });

  it("sign in by themselves nowhere but on the machine that runs the demo", async () => {
    const { visitorOf } = await import("#server/people/visitor.ts");
    const { DEMO_OWNER } = await import("#server/people/actor.ts");
    const bar = await aDoor();
    const door = openDoor({ db: bar.db, now: bar.now, hashing: STRONG });
    const from = async (address: string) => {
      const c = {
        req: { url: "http://bar.test/", header: () => undefined, raw: { headers: new Headers() } },
        env: { incoming: { socket: { remoteAddress: address, remotePort: 1, remoteFamily: "IPv4" } } },
      };
      return (await visitorOf(c as never, door, DEMO_OWNER)).actor?.via ?? null;
    };
    expect(await from("127.0.0.1")).toBe("demo");
    expect(await from("::1")).toBe("demo");
    expect(await from("192.168.1.20")).toBeNull();
    expect(await from("10.127.0.1")).toBeNull();
  });
});
