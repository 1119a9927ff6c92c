import { replaceBook } from "#db/book-repository.ts";
import { type Db, IN_MEMORY, openDatabase } from "#db/open.ts";
import type { Book } from "#engine/book.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";
import { createApp } from "#server/app.ts";
import { DEMO_OWNER } from "#server/people/actor.ts";

export type TestApp = {
  db: Db;
  get: (path: string) => Promise<{ status: number; body: unknown }>;
  post: (path: string, body: unknown) => Promise<{ status: number; body: unknown }>;
  send: (path: string, form: FormData) => Promise<{ status: number; body: unknown }>;
  /** One request just as it is given. */
  raw: (url: string, init?: RequestInit) => Promise<Response>;
};

/** The real server over a database in memory that holds a book, at noon on 9 March 2026. */
export async function aTestApp(book?: Book, lines: SaleLine[] = []): Promise<TestApp> {
  const db = openDatabase(IN_MEMORY);
  if (book !== undefined) {
    const sales =
      lines.length === 0 ? [] : [{ file: "sales.csv", lines, shape: { files: "sales.csv" }, refused: [] }];
    await replaceBook(db, book, sales, { now: "2026-03-09T12:00:00Z", by: "test" });
  }
  const app = createApp({
    db,
    now: () => new Date("2026-03-09T12:00:00Z"),
    webFolder: "/nowhere",
    signIn: { openAs: DEMO_OWNER },
  });
  const answer = async (answered: Response | Promise<Response>) => {
    const response = await answered;
    return { status: response.status, body: await response.json() };
  };
  return {
    db,
    raw: async (url, init) => app.request(url, init),
    get: (path) => answer(app.request(path)),
    post: (path, body) =>
      answer(
        app.request(path, {
          method: "POST",
          headers: { "content-type": "application/json" },
          body: JSON.stringify(body),
        }),
      ),
    send: (path, form) =>
      answer(app.request(path, { method: "POST", body: form, headers: { origin: "http://localhost" } })),
  };
}
