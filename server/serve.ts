import { serve } from "@hono/node-server";
import type { Db } from "#db/open.ts";
import { createApp } from "#server/app.ts";
import { webFolder } from "#server/static.ts";

export type RunningServer = { url: string; close: () => Promise<void> };

/** Listens for requests. Port 0 takes any free one. Rejects when the port is taken. */
export function startServer(db: Db, { port, host }: { port: number; host: string }): Promise<RunningServer> {
  const app = createApp({ db, now: () => new Date(), webFolder: webFolder() });
  return new Promise((resolve, reject) => {
    const server = serve({ fetch: app.fetch, port, hostname: host }, (info) => {
      const name = info.family === "IPv6" ? `[${info.address}]` : info.address;
      resolve({
        url: `http://${name}:${info.port}`,
        close: () => new Promise((done) => server.close(() => done())),
      });
    });
    server.on("error", reject);
  });
}
