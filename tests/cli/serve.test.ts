import { readFileSync } from "node:fs";
import { request } from "node:https";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, type Db, IN_MEMORY, openDatabase } from "#db/open.ts";
import { readListening } from "#server/cli/listening.ts";
import { type RunningServer, startServer } from "#server/serve.ts";
import { runUllage } from "#tests/support/run-ullage.ts";

// A certificate of the tests alone; nothing trusts it but the request below.
const CERT = join(import.meta.dirname, "tls/test-only.pem");
const KEY = join(import.meta.dirname, "tls/test-only-key.pem");

describe("who may listen in", () => {
  it.each(["127.0.0.1", "127.8.8.8", "localhost", "::1"])(
    "%s is this machine: no certificate needed",
    (host) => {
      expect(readListening({ host })).toEqual({ port: 4680, host, tls: null, names: [] });
    },
  );

  it.each(["0.0.0.0", "192.168.1.20", "::", "bar.example"])(
    "%s lets others in, so it is refused without HTTPS",
    async (host) => {
      const { status, err } = await runUllage("serve", "--host", host, "--db", "/nowhere/bar.db");
      expect(status).toBe(2);
      expect(err).toContain("--tls-cert");
      expect(err).toContain("--insecure-http");
      expect(err.trim().split("\n")).toHaveLength(1);
    },
  );

  it("lets others in without HTTPS only when told to", () => {
    expect(readListening({ host: "0.0.0.0", insecureHttp: true })).toMatchObject({
      host: "0.0.0.0",
      tls: null,
    });
  });

  it("lets others in with a certificate and its key", () => {
    const { tls } = readListening({ host: "0.0.0.0", tlsCert: CERT, tlsKey: KEY });
    expect(tls).toEqual({ cert: readFileSync(CERT, "utf8"), key: readFileSync(KEY, "utf8") });
  });

  it.each([
    [{ tlsCert: CERT }, "belong together"],
    [{ tlsKey: KEY }, "belong together"],
    [{ tlsCert: CERT, tlsKey: "/nowhere/key.pem" }, "/nowhere/key.pem cannot be read"],
    [{ tlsCert: KEY, tlsKey: CERT }, "no certificate with its private key"],
    [{ port: "70000" }, "no port"],
  ])("refuses %o, saying that it is %s", (options, said) => {
    expect(() => readListening(options)).toThrow(said);
  });
});

describe("over HTTPS", () => {
  let db: Db;
  let server: RunningServer;
  beforeAll(async () => {
    db = openDatabase(IN_MEMORY);
    server = await startServer(db, {
      ...readListening({ host: "127.0.0.1", port: "0", tlsCert: CERT, tlsKey: KEY }),
    });
  });
  afterAll(async () => {
    await server?.close();
    closeDatabase(db);
  });

  it("answers a reader who trusts the certificate, and nobody else", async () => {
    expect(server.url).toMatch(/^https:\/\/127\.0\.0\.1:\d+$/);
    expect(await statusOf(`${server.url}/api/openapi.json`, readFileSync(CERT, "utf8"))).toBe(200);
    await expect(statusOf(`${server.url}/api/openapi.json`)).rejects.toThrow(/self.signed/);
  });
});

function statusOf(url: string, ca?: string): Promise<number | undefined> {
  return new Promise((resolve, reject) => {
    request(url, { agent: false, ...(ca === undefined ? {} : { ca }) }, (response) => {
      response.resume();
      resolve(response.statusCode);
    })
      .on("error", reject)
      .end();
  });
}
