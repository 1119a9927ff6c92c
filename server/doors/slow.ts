import type { Server as HttpServer } from "node:http";
import type { Server as HttpsServer } from "node:https";
import { takesFiles } from "#server/doors/body.ts";

/** How long whoever connects may take; a connection that dawdles is closed, so that a few cannot hold all. */
export const PATIENCE = {
  headersMs: 10_000,
  /** A form's worth of body. */
  bodyMs: 20_000,
  /** A file at a slow network's pace: 4 GB at 10 Mbit/s take an hour. */
  fileMs: 3_600_000,
  /** Nothing said on a connection, in either direction. */
  silentMs: 120_000,
  keepAliveMs: 5_000,
  checkedEveryMs: 2_000,
} as const;

const CONNECTIONS_MOST = 1_000;
const HEADERS_MOST = 100;

/** Gives a server its bounds against slow and many connections (slow loris). */
export function hurry(
  server: HttpServer | HttpsServer,
  patience: Record<keyof typeof PATIENCE, number> = PATIENCE,
): void {
  server.headersTimeout = patience.headersMs;
  server.requestTimeout = patience.fileMs;
  server.keepAliveTimeout = patience.keepAliveMs;
  server.maxHeadersCount = HEADERS_MOST;
  server.maxConnections = CONNECTIONS_MOST;
  server.setTimeout(patience.silentMs);
  server.prependListener("request", (request) => {
    const path = (request.url ?? "").split("?")[0] ?? "";
    if (request.method === "GET" || request.method === "HEAD" || takesFiles(path)) return;
    const timer = setTimeout(() => request.complete || request.destroy(), patience.bodyMs);
    timer.unref();
    request.once("close", () => clearTimeout(timer));
  });
}
