import { createServer, type Server } from "node:http";
import { type AddressInfo, connect, type Socket } from "node:net";
import { afterEach, describe, expect, it } from "vitest";
import { hurry, PATIENCE } from "#server/doors/slow.ts";

const SHORT = {
  headersMs: 200,
  bodyMs: 300,
  fileMs: 1_500,
  silentMs: 5_000,
  keepAliveMs: 200,
  checkedEveryMs: 50,
};

let server: Server;
afterEach(() => {
  server.closeAllConnections();
  server.close();
});

/** A server that reads every body to its end, hurried. */
async function hurried(patience: typeof SHORT): Promise<number> {
  server = createServer({ connectionsCheckingInterval: patience.checkedEveryMs }, (request, response) => {
    request.on("error", () => undefined);
    request.resume().on("end", () => response.end("done"));
  });
  hurry(server, patience);
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  return (server.address() as AddressInfo).port;
}

/** Sends one piece after another, a letter at a time for the last, and tells how long it was listened to. */
function drip(port: number, head: string): Promise<{ heldMs: number; answer: string }> {
  return new Promise((resolve) => {
    const startedMs = performance.now();
    let answer = "";
    const socket: Socket = connect(port, "127.0.0.1", () => socket.write(head));
    const more = setInterval(() => socket.write("x"), 40);
    socket.on("data", (chunk) => {
      answer += chunk.toString();
    });
    socket.on("error", () => undefined);
    socket.on("close", () => {
      clearInterval(more);
      resolve({ heldMs: performance.now() - startedMs, answer });
    });
  });
}

const post = (path: string) => `POST ${path} HTTP/1.1\r\nHost: localhost\r\nContent-Length: 100000\r\n\r\n`;

describe("whoever sends a letter at a time", () => {
  it("loses the connection while still naming headers", async () => {
    const { heldMs, answer } = await drip(await hurried(SHORT), "GET / HTTP/1.1\r\nX-Long: ");
    expect(answer).toContain("408");
    expect(heldMs).toBeLessThan(1_200);
  });

  it("loses it in the middle of a form", async () => {
    const { heldMs } = await drip(await hurried(SHORT), post("/api/losses"));
    expect(heldMs).toBeGreaterThan(250);
    expect(heldMs).toBeLessThan(1_200);
  });

  it("has more time for a file, and not for ever", async () => {
    const { heldMs, answer } = await drip(await hurried(SHORT), post("/api/sales/jobs?name=till.csv"));
    expect(heldMs).toBeGreaterThan(1_200);
    expect(heldMs).toBeLessThan(4_000);
    expect(answer).toContain("408");
  });
});

it("gives a phone at the far end of the cellar time enough, and nobody minutes of nothing", () => {
  expect(PATIENCE.headersMs).toBeGreaterThanOrEqual(5_000);
  expect(PATIENCE.bodyMs).toBeGreaterThanOrEqual(10_000);
  expect(PATIENCE.headersMs + PATIENCE.bodyMs).toBeLessThanOrEqual(60_000);
});
