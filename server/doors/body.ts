import type { Context, MiddlewareHandler } from "hono";
import { bodyLimit } from "hono/body-limit";
import { HTTPException } from "hono/http-exception";

const MB = 1024 * 1024;

type Limit = { bytes: number; instead: string };

const JSON_LIMIT: Limit = { bytes: MB, instead: "Send less at once." };
const SHEET_LIMIT: Limit = { bytes: 16 * MB, instead: "Split the list." };
const SALES_LIMIT: Limit = {
  bytes: 64 * MB,
  instead: "Split the file, or use the command line: ullage sales FILE.",
};

/** Routes that take more than a form's worth. Long sales files go from the wire to the disk and count their own bytes. */
const LIMITS: Readonly<Record<string, Limit | "own">> = {
  "/api/price-lists": SHEET_LIMIT,
  "/api/price-lists/read": SHEET_LIMIT,
  "/api/sales/preview": SALES_LIMIT,
  "/api/sales/import": SALES_LIMIT,
  "/api/sales/jobs": "own",
};

/** Whether a request may carry a file, which takes its time on a slow network. */
export function takesFiles(path: string): boolean {
  return LIMITS[path] !== undefined;
}

/** Reads no more of a request than its route can want, and nothing that is packed: a small packet could hold a giant. */
export function boundedBody(): MiddlewareHandler {
  const bounded = new Map<Limit, MiddlewareHandler>();
  for (const limit of [JSON_LIMIT, SHEET_LIMIT, SALES_LIMIT]) {
    bounded.set(limit, bodyLimit({ maxSize: limit.bytes, onError: (c) => tooLarge(c, limit) }));
  }
  return async (c, next) => {
    refusePacked(c);
    const limit = LIMITS[c.req.path] ?? JSON_LIMIT;
    const bound = limit === "own" ? undefined : bounded.get(limit);
    return bound === undefined ? next() : bound(c, next);
  };
}

function refusePacked(c: Context): void {
  const encoding = c.req.header("content-encoding") ?? "identity";
  if (encoding.trim().toLowerCase() === "identity") return;
  throw new HTTPException(415, {
    message: `Bodies packed with "${encoding.slice(0, 20)}" are not read; send it as it is.`,
  });
}

function tooLarge(c: Context, { bytes, instead }: Limit): Response {
  const message = `That is more than ${bytes / MB} MB at once, which is the most this takes. ${instead}`;
  return c.json({ problems: [{ field: "", message }] }, 413);
}
