import { createServer } from "node:https";
import { serve } from "@hono/node-server";
import type { Db } from "#db/open.ts";
import { createApp } from "#server/app.ts";
import { webFolder } from "#server/static.ts";

export type RunningServer = { url: string; close: () => Promise<void> };

/** A certificate and its private key, as PEM text. */
export type Tls = { cert: string; key: string };

type Listening = { port: number; host: string; tls: Tls | null };

/** Listens for requests, over HTTPS where a certificate is given. Port 0 takes any free one. Rejects when the port is taken. */
export function startServer(db: Db, { port, host, tls }: Listening): Promise<RunningServer> {
  const app = createApp({ db, now: () => new Date(), webFolder: webFolder() });
  const secured = tls === null ? {} : { createServer, serverOptions: tls };
  return new Promise((resolve, reject) => {
    const server = serve({ fetch: app.fetch, port, hostname: host, ...secured }, (info) => {
      const name = info.family === "IPv6" ? `[${info.address}]` : info.address;
      resolve({
        url: `${tls === null ? "http" : "https"}://${name}:${info.port}`,
        close: () => new Promise((done) => server.close(() => done())),
      });
    });
    server.on("error", reject);
  });
}
