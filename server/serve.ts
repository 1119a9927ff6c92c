import { Server as HttpServer } from "node:http";
import { createServer, Server as HttpsServer } from "node:https";
import { serve } from "@hono/node-server";
import type { Db } from "#db/open.ts";
import { type AppDeps, createApp } from "#server/app.ts";
import { isThisMachine } from "#server/doors/host.ts";
import { hurry, PATIENCE } from "#server/doors/slow.ts";
import { webFolder } from "#server/static.ts";

export type RunningServer = { url: string; close: () => Promise<void> };

/** A certificate and its private key, as PEM text. */
export type Tls = { cert: string; key: string };

type Listening = { port: number; host: string; tls: Tls | null; names?: readonly string[] } & Pick<
  AppDeps,
  "signIn" | "backupTrouble"
>;

/** Listens for requests, over HTTPS where a certificate is given. Port 0 takes any free one. Rejects when the port is taken. */
export function startServer(
  db: Db,
  { port, host, tls, names = [], ...deps }: Listening,
): Promise<RunningServer> {
  const rule = { listensHere: isThisMachine(host), isSecured: tls !== null, names };
  const app = createApp({ db, now: () => new Date(), webFolder: webFolder(), host: rule, ...deps });
  const checking = { connectionsCheckingInterval: PATIENCE.checkedEveryMs };
  const secured =
    tls === null ? { serverOptions: checking } : { createServer, serverOptions: { ...tls, ...checking } };
  return new Promise((resolve, reject) => {
    const server = serve({ fetch: app.fetch, port, hostname: host, ...secured }, (info) => {
      const name = info.family === "IPv6" ? `[${info.address}]` : info.address;
      resolve({
        url: `${tls === null ? "http" : "https"}://${name}:${info.port}`,
        close: () => closed(server),
      });
    });
    if (server instanceof HttpServer || server instanceof HttpsServer) hurry(server);
    server.on("error", reject);
  });
}

/** How long a request under way may still take when the server is told to stop. */
const LAST_WORDS_MS = 5_000;

function closed(server: ReturnType<typeof serve>): Promise<void> {
  return new Promise((done) => {
    server.close(() => done());
    if (!("closeAllConnections" in server)) return;
    setTimeout(() => server.closeAllConnections(), LAST_WORDS_MS).unref();
  });
}
