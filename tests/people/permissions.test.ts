import { beforeAll, describe, expect, it } from "vitest";
import { IN_MEMORY, openDatabase } from "#db/open.ts";
import { ROLES, type Role } from "#db/schema/people.ts";
import { createApp } from "#server/app.ts";
import { RULES } from "#server/people/permissions.ts";
import { aDoor, CHEAP, type TestBar, type TestBrowser } from "#tests/people/door.ts";
import { handBook } from "#tests/support/hand-bar.ts";

/**
 * Who may do what, written down a second time and by hand, so that no slip in the table passes: the owner (o), a manager
 * (m), somebody who counts (c), a prep cook (p), anybody (*). After it "w" where it writes; "!" where no token may.
 */
const EXPECTED = `
GET  /api/openapi.json                       *
GET  /api/sign-in                            *
POST /api/sign-in/password                   *
POST /api/sign-in/pin                        *
POST /api/sign-in/link                       *
POST /api/sign-in/link/look                  *
POST /api/sign-in/change                     omcp w !
POST /api/sign-in/out                        omcp w !
POST /api/sign-in/out-everywhere             omcp w !
GET  /api/people                             o    !
POST /api/people                             o    w !
POST /api/people/{id}                        o    w !
POST /api/people/{id}/link                   o    w !
POST /api/people/{id}/sign-out               o    w !
GET  /api/devices                            om   !
POST /api/devices                            om   w !
POST /api/devices/{id}/remove                om   w !
GET  /api/tokens                             o    !
POST /api/tokens                             o    w !
POST /api/tokens/{id}/revoke                 o    w !
GET  /api/week                               omcp
GET  /api/venue                              omcp
POST /api/venue                              om   w
POST /api/venue/settings                     om   w
GET  /api/catalogue                          omcp
GET  /api/stock                              omcp
GET  /api/counts                             omcp
GET  /api/counts/sheet                       omc
GET  /api/counts/rows/{name}                 omc
POST /api/counts/entries                     omc  w
POST /api/areas                              omc  w
POST /api/batches                            omcp w
POST /api/losses                             omcp w
POST /api/deliveries                         omc  w
POST /api/transfers                          omc  w
GET  /api/entries/{kind}                     omcp
POST /api/entries/{kind}/{id}/correct        omcp w
POST /api/entries/{kind}/{id}/withdraw       omcp w
GET  /api/reports/prep                       omcp
GET  /api/reports/prep/card                  omcp
GET  /api/reports/forecast                   omcp
GET  /api/reports/forecast/past              omcp
GET  /api/reports/use                        om
GET  /api/reports/variance                   om
GET  /api/reports/variance/item              om
GET  /api/reports/owner                      om
GET  /api/reports/trend                      om
GET  /api/reports/order                      om
GET  /api/reports/cost                       om
GET  /api/reports/make-or-buy                om
GET  /api/reports/replay                     om
POST /api/reports/replay                     om
POST /api/reports/what-if                    om
GET  /api/orders                             omc
GET  /api/orders/late                        omc
GET  /api/orders/check                       om
GET  /api/orders/par-effect                  om
POST /api/orders                             om   w
POST /api/orders/pars                        om   w
POST /api/causes/settle                      om   w
GET  /api/causes/settled                     om
POST /api/causes/settled/{id}/take-back      om   w
POST /api/sales/preview                      om
POST /api/sales/import                       om   w
POST /api/sales/jobs                         om   w
GET  /api/sales/jobs/{id}                    om
POST /api/sales/jobs/{id}/look               om   w
POST /api/sales/jobs/{id}/import             om   w
POST /api/sales/jobs/{id}/cancel             om   w
GET  /api/sales/imports                      om
POST /api/sales/imports/{id}/undo            om   w
GET  /api/sales/days                         om
GET  /api/sales/lines                        om
GET  /api/sales/staff                        o
POST /api/sales/staff                        o    w
POST /api/sales/staff/erase                  o    w !
GET  /api/sales/unmapped                     om
POST /api/specs/read                         om
POST /api/specs                              om   w
POST /api/drinks                             om   w
POST /api/preps                              om   w
POST /api/preps/new                          om   w
POST /api/preps/preview                      om
POST /api/cuts                               om   w
POST /api/items                              om   w
POST /api/packs                              om   w
GET  /api/ring-names                         om
POST /api/ring-names                         om   w
POST /api/ring-names/accept                  om   w
POST /api/ring-names/undo                    om   w
POST /api/ring-names/remove                  om   w
POST /api/modifiers                          om   w
POST /api/price-lists/read                   om
POST /api/price-lists                        om   w
POST /api/suppliers                          om   w
GET  /api/history                            om
POST /api/history/{seq}/undo                 om   w
GET  /api/closing                            om
POST /api/closing                            om   w
POST /api/closing/reopen                     o    w
`;

type Expected = {
  method: string;
  path: string;
  roles: readonly Role[] | "anyone";
  writes: boolean;
  noToken: boolean;
};

const ROLE_OF: Record<string, Role> = { o: "owner", m: "manager", c: "counter", p: "prep" };

const expected = EXPECTED.trim()
  .split("\n")
  .map((line): Expected => {
    const [method = "", path = "", who = "", ...marks] = line.split(/\s+/);
    const roles = who === "*" ? "anyone" : [...who].flatMap((letter) => ROLE_OF[letter] ?? []);
    return { method, path, roles, writes: marks.includes("w"), noToken: marks.includes("!") };
  });
const nameOf = ({ method, path }: Expected) => `${method} ${path}`;

async function routesInDocument(): Promise<string[]> {
  const app = createApp({ db: openDatabase(IN_MEMORY), now: () => new Date(), webFolder: "/nowhere" });
  const document = (await (await app.request("http://localhost/api/openapi.json")).json()) as {
    paths: Record<string, Record<string, unknown>>;
  };
  return Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.keys(methods).map((method) => `${method.toUpperCase()} ${path.replace(/(.)\/$/, "$1")}`),
  );
}

/** The routes as the router has them, so that one left out of the document is found, too. */
function routesInRouter(): string[] {
  const app = createApp({ db: openDatabase(IN_MEMORY), now: () => new Date(), webFolder: "/nowhere" });
  return app.routes
    .filter(({ method, path }) => method !== "ALL" && path.startsWith("/api") && !path.includes("*"))
    .map(({ method, path }) => `${method} ${path.replace(/:(\w+)/g, "{$1}").replace(/(.)\/$/, "$1")}`);
}

describe("the table of permissions", () => {
  it("has a rule for every route there is, and none for a route that is gone", async () => {
    const routes = new Set([...(await routesInDocument()), ...routesInRouter()]);
    expect([...routes].filter((route) => RULES[route] === undefined)).toEqual([]);
    expect(Object.keys(RULES).filter((route) => !routes.has(route))).toEqual([]);
  });

  it("says of every route what is written down here", () => {
    expect(expected.map(nameOf).sort()).toEqual(Object.keys(RULES).sort());
  });
});

/** What the server answers before it has looked at what was asked: not signed in, or not allowed. */
function isShut(status: number): boolean {
  return status === 401 || status === 403;
}

describe("at every route", () => {
  let bar: TestBar;
  const browsers = new Map<Role, TestBrowser>();
  beforeAll(async () => {
    bar = await aDoor(handBook());
    for (const role of ROLES) browsers.set(role, await bar.signedIn(`The ${role}`, role));
  });

  const ask = (own: TestBrowser, { method, path }: Expected, headers: Record<string, string> = {}) => {
    const filled = path.replace("{kind}", "losses").replace(/\{\w+\}/g, "999");
    return method === "GET" ? own.get(filled, headers) : own.post(filled, {}, headers);
  };

  it.each(ROLES)("%s gets what that role may have, and nothing else", async (role) => {
    const own = browsers.get(role) as TestBrowser;
    const wrong: string[] = [];
    for (const route of expected) {
      // Signing out ends the session the others are asked with.
      if (route.path.startsWith("/api/sign-in")) continue;
      const { status } = await ask(own, route);
      const isAllowed = route.roles === "anyone" || route.roles.includes(role);
      if (isAllowed ? isShut(status) || status >= 500 : status !== 403)
        wrong.push(`${nameOf(route)}: ${status}`);
    }
    expect(wrong).toEqual([]);
  });

  it("nobody gets anything without signing in, but the way in itself", async () => {
    const wrong: string[] = [];
    for (const route of expected) {
      const { status, body } = await ask(bar.browser(), route);
      const isOpen = route.roles === "anyone";
      const isAskedFirst = status === 401 && /Sign in to go on/.test(JSON.stringify(body));
      if (isOpen ? isAskedFirst || status >= 500 : status !== 401) wrong.push(`${nameOf(route)}: ${status}`);
    }
    expect(wrong).toEqual([]);
  });

  it.each(ROLES.flatMap((role) => [[role, "read"] as const, [role, "write"] as const]))(
    "a token of %s to %s does no more than that",
    async (role, scope) => {
      const token = await bar.token(role, scope);
      const headers = { authorization: `Bearer ${token}` };
      const wrong: string[] = [];
      for (const route of expected) {
        if (route.roles === "anyone") continue;
        // A program sends no word of where it comes from.
        const { status } = await ask(bar.browser(), route, { ...headers, "sec-fetch-site": "" });
        const isAllowed =
          route.roles.includes(role) && !route.noToken && (scope === "write" || !route.writes);
        if (isAllowed ? isShut(status) || status >= 500 : status !== 403)
          wrong.push(`${nameOf(route)}: ${status}`);
      }
      expect(wrong).toEqual([]);
    },
  );

  it("a token that was never made, or was revoked, gets nothing", async () => {
    const token = await bar.token("manager", "read").catch(() => "ullage_manager-read");
    const owner = browsers.get("owner") as TestBrowser;
    const tokens = (await owner.get("/api/tokens")).body as { id: number; name: string }[];
    expect(JSON.stringify(tokens)).not.toContain("ullage_");
    const own = tokens.find(({ name }) => name === "manager read");
    const ask = async (secret: string) =>
      (await bar.browser().get("/api/venue", { authorization: `Bearer ${secret}` })).status;
    expect(await ask(token)).toBe(200);
    await owner.post(`/api/tokens/${own?.id}/revoke`);
    expect(await ask(token)).toBe(401);
    expect(await ask("ullage_never")).toBe(401);
  });

  it("what is at no route is not found, and says so to who is signed in alone", async () => {
    const owner = browsers.get("owner") as TestBrowser;
    expect((await owner.get("/api/nothing")).status).toBe(404);
    expect((await bar.browser().get("/api/nothing")).status).toBe(401);
  });
});

it("a route that nobody wrote a rule for is refused, to the owner too", async () => {
  const { Hono } = await import("hono");
  const { guard } = await import("#server/people/guard.ts");
  const { openDoor } = await import("#server/people/door.ts");
  const { DEMO_OWNER } = await import("#server/people/actor.ts");
  const door = openDoor({ db: openDatabase(IN_MEMORY), now: () => new Date(), hashing: CHEAP });
  const app = new Hono();
  app.use("/api/*", guard(door, DEMO_OWNER));
  app.get("/api/new", (c) => c.json("secret"));
  expect((await app.request("/api/new")).status).toBe(403);
});
