import { replaceBook } from "#db/book-repository.ts";
import { addDevice } from "#db/devices-repository.ts";
import { type Db, IN_MEMORY, openDatabase } from "#db/open.ts";
import { addPerson, setSecret } from "#db/people-repository.ts";
import { addToken } from "#db/tokens-repository.ts";
import type { Book } from "#engine/book.ts";
import { createApp } from "#server/app.ts";
import type { Role } from "#server/people/actor.ts";
import { kindFor } from "#server/people/choose-secret.ts";
import { type HashCost, hashSecret, secretHash } from "#server/people/secrets.ts";

/** Hashes that take no time: what is tested is who gets in, not what a guess costs. */
export const CHEAP: HashCost = { memoryCost: 8, timeCost: 1, parallelism: 1 };

export const PASSWORD = "three bent corkscrews";
export const PIN = "7392";
/** The cookie of the one device that is enrolled. */
export const DEVICE_SECRET = "the bar phone's secret";

export type Answer = { status: number; body: unknown; headers: Headers };

/** A browser: keeps its cookies from one request to the next, and sends what a browser of today sends. */
export type TestBrowser = {
  cookies: Map<string, string>;
  get: (path: string, headers?: Record<string, string>) => Promise<Answer>;
  post: (path: string, body?: unknown, headers?: Record<string, string>) => Promise<Answer>;
};

export type TestBar = {
  db: Db;
  /** Moves the clock on. */
  wait: (ms: number) => void;
  now: () => Date;
  browser: (options?: { url?: string; isEnrolled?: boolean }) => TestBrowser;
  add: (name: string, role: Role) => Promise<number>;
  signedIn: (name: string, role: Role) => Promise<TestBrowser>;
  token: (role: Role, scope: "read" | "write") => Promise<string>;
};

/** The real server over a database in memory, where people have to sign in, at noon on 9 March 2026. */
export async function aDoor(book?: Book): Promise<TestBar> {
  const db = openDatabase(IN_MEMORY);
  let nowMs = Date.parse("2026-03-09T12:00:00Z");
  const now = () => new Date(nowMs);
  if (book !== undefined) await replaceBook(db, book, [], { now: now().toISOString(), by: "test" });
  const app = createApp({ db, now, webFolder: "/nowhere", hashing: CHEAP });
  const doing = () => ({ now: now().toISOString(), by: "test" });
  await addDevice(db, { name: "Bar phone", secretHash: secretHash(DEVICE_SECRET) }, doing());

  const browser: TestBar["browser"] = ({ url = "http://localhost:4680", isEnrolled = false } = {}) => {
    const cookies = new Map<string, string>();
    if (isEnrolled) cookies.set("ullage-device-4680", DEVICE_SECRET);
    const ask = async (path: string, request: RequestInit): Promise<Answer> => {
      const headers = new Headers(request.headers);
      if (cookies.size > 0) {
        headers.set("cookie", [...cookies].map(([name, value]) => `${name}=${value}`).join("; "));
      }
      const answer = await app.request(url + path, { ...request, headers });
      for (const line of answer.headers.getSetCookie()) keep(cookies, line);
      const text = await answer.text();
      return { status: answer.status, body: text === "" ? null : JSON.parse(text), headers: answer.headers };
    };
    return {
      cookies,
      get: (path, headers = {}) => ask(path, { headers }),
      post: (path, body = {}, headers = {}) =>
        ask(path, {
          method: "POST",
          headers: { "content-type": "application/json", "sec-fetch-site": "same-origin", ...headers },
          body: JSON.stringify(body),
        }),
    };
  };

  const add: TestBar["add"] = async (name, role) => {
    const id = await addPerson(db, { name, role }, doing());
    const hashed = await hashSecret(kindFor(role) === "pin" ? PIN : PASSWORD, CHEAP);
    await setSecret(
      db,
      id,
      kindFor(role) === "pin" ? { pinHash: hashed } : { passwordHash: hashed },
      doing(),
    );
    return id;
  };

  return {
    db,
    now,
    wait: (ms) => {
      nowMs += ms;
    },
    browser,
    add,
    signedIn: async (name, role) => {
      const id = await add(name, role);
      const own = browser({ isEnrolled: kindFor(role) === "pin" });
      const { status } =
        kindFor(role) === "pin"
          ? await own.post("/api/sign-in/pin", { person: id, pin: PIN })
          : await own.post("/api/sign-in/password", { name, password: PASSWORD });
      if (status !== 200) throw new Error(`${name} could not sign in: ${status}.`);
      return own;
    },
    token: async (role, scope) => {
      const secret = `ullage_${role}-${scope}`;
      await addToken(db, { name: `${role} ${scope}`, role, scope, secretHash: secretHash(secret) }, doing());
      return secret;
    },
  };
}

/** A cookie as a browser takes it: one that is out of date goes. */
function keep(cookies: Map<string, string>, line: string): void {
  const [pair = "", ...attributes] = line.split("; ");
  const [name = "", value = ""] = pair.split("=");
  if (attributes.includes("Max-Age=0")) cookies.delete(name);
  else cookies.set(name, value);
}
