import { gzipSync } from "node:zlib";
import { beforeAll, describe, expect, it } from "vitest";
import { handBook } from "#tests/support/hand-bar.ts";
import { aTestApp, type TestApp } from "#tests/support/test-app.ts";

const MB = 1024 * 1024;
const NOTHING_LISTENS = "http://localhost";

let app: TestApp;
beforeAll(async () => {
  app = await aTestApp(handBook());
});

type Problems = { problems: { message: string }[] };

async function post(path: string, body: BodyInit, headers: Record<string, string> = {}) {
  const response = await app.raw(`${NOTHING_LISTENS}${path}`, {
    method: "POST",
    body,
    headers: { origin: NOTHING_LISTENS, ...headers },
  });
  const { problems = [] } = (await response.json()) as Partial<Problems>;
  return { status: response.status, said: problems.map(({ message }) => message).join("\n") };
}

function file(bytes: Uint8Array<ArrayBuffer> | string, name = "till.csv", more: Record<string, string> = {}) {
  const form = new FormData();
  form.set("file", new File([bytes], name));
  for (const [field, value] of Object.entries(more)) form.set(field, value);
  return form;
}

describe("what a request may carry", () => {
  it("a form's worth of JSON, and not a megabyte more", async () => {
    const { status, said } = await post("/api/losses", JSON.stringify({ note: "x".repeat(MB) }), {
      "content-type": "application/json",
    });
    expect(status).toBe(413);
    expect(said).toBe("That is more than 1 MB at once, which is the most this takes. Send less at once.");
  });

  it("says how large a price list or a sales file may be, and what to do with a larger one", async () => {
    const list = await post("/api/price-lists/read", file(new Uint8Array(17 * MB), "list.csv"));
    expect(list.status).toBe(413);
    expect(list.said).toContain("16 MB");
    const sales = await post("/api/sales/preview", file(new Uint8Array(65 * MB)));
    expect(sales.status).toBe(413);
    expect(sales.said).toContain("64 MB");
    expect(sales.said).toContain("ullage sales FILE");
  });

  it("counts what comes without a length too", async () => {
    let sent = 0;
    const endless = new ReadableStream<Uint8Array>({
      pull(controller) {
        sent += MB;
        controller.enqueue(new Uint8Array(MB).fill(32));
        if (sent > 100 * MB) controller.close();
      },
    });
    const response = await app.raw(`${NOTHING_LISTENS}/api/losses`, {
      method: "POST",
      body: endless,
      headers: { origin: NOTHING_LISTENS, "content-type": "application/json" },
      duplex: "half",
    } as RequestInit);
    expect(response.status).toBe(413);
    expect(sent).toBeLessThan(10 * MB);
  });

  it.each(["gzip", "deflate", "br", "zstd", "gzip, gzip"])(
    "nothing packed with %s: a small packet could hold a giant",
    async (encoding) => {
      const { status, said } = await post("/api/losses", new Uint8Array(gzipSync("{}")), {
        "content-encoding": encoding,
        "content-type": "application/json",
      });
      expect(status).toBe(415);
      expect(said).toContain(encoding);
    },
  );
});

// A gigabyte of nothing as gzip is about a megabyte; a workbook and a zip begin alike.
const PACKED: [string, Uint8Array<ArrayBuffer>, RegExp][] = [
  ["gzip", new Uint8Array(gzipSync(new Uint8Array(20 * MB))), /gzip|packed/i],
  ["zip or workbook", new Uint8Array([0x50, 0x4b, 3, 4, ...new Uint8Array(200)]), /zip|workbook/i],
];
const TAKERS: [string, (bytes: Uint8Array<ArrayBuffer>) => BodyInit][] = [
  ["/api/sales/preview", (bytes) => file(bytes)],
  ["/api/sales/import", (bytes) => file(bytes)],
  ["/api/price-lists/read", (bytes) => file(bytes, "list.csv", { supplier: "Quayside", from: "2026-03-09" })],
];

describe.each(TAKERS)("%s", (path, packet) => {
  it.each(PACKED)("does not unpack a %s file, and says what to send instead", async (_, bytes, words) => {
    const { status, said } = await post(path, packet(bytes));
    expect(status).toBe(422);
    expect(said).toMatch(words);
    expect(said).toMatch(/CSV|unpack/);
  });

  it.each([
    ["one cell of 15 MB", `Date,Item,Price,Qty\n2026-03-01,${"A".repeat(15 * MB)},1,2\n`],
    ["a million columns", `Date,Item,Price,Qty${",x".repeat(1_000_000)}\n2026-03-01,Gin,1,2\n`],
    ["a million cells in a row", `Date,Item,Price,Qty\n2026-03-01,Gin,1,2${",x".repeat(1_000_000)}\n`],
    ["nothing but quotation marks", `Date,Item,Price,Qty\n${'"'.repeat(4 * MB)}`],
  ])("turns a file with %s away soon and in words", async (_, text) => {
    const startedMs = performance.now();
    const { status, said } = await post(path, packet(new TextEncoder().encode(text)));
    expect(performance.now() - startedMs).toBeLessThan(10_000);
    expect(status).toBe(422);
    expect(said.length).toBeGreaterThan(20);
    expect(said.length).toBeLessThan(2_000);
  });

  it("reads on behind a quotation mark that is never closed, or says where it is: soon, either way", async () => {
    const row = "2026-03-01,Gin,1,2\n";
    const text = `Date,Item,Price,Qty\n2026-03-01,"Gin,1,2\n${row.repeat(10_000)}`;
    const startedMs = performance.now();
    const { status, said } = await post(path, packet(new TextEncoder().encode(text)));
    expect(performance.now() - startedMs).toBeLessThan(10_000);
    if (status !== 200) expect([status, said]).toEqual([422, expect.stringMatching(/quotation mark/)]);
  });
});
