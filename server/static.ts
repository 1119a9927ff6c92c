import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { dirname, extname, join, normalize, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { Hono } from "hono";

const TYPES: Record<string, string> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".ico": "image/x-icon",
  ".json": "application/json; charset=utf-8",
  ".webmanifest": "application/manifest+json",
  ".woff2": "font/woff2",
  ".wasm": "application/wasm",
  ".txt": "text/plain; charset=utf-8",
};

/** The built screens, beside the compiled program or in the checkout's dist. */
export function webFolder(): string {
  const here = dirname(fileURLToPath(import.meta.url));
  const beside = join(here, "..", "web");
  return existsSync(join(beside, "assets")) ? beside : join(here, "..", "dist", "web");
}

/** Serves the built screens; any path that is no file is a screen, so it gets the page itself. */
export function screens(folder: string) {
  return new Hono().get("*", async (c) => {
    const path = normalize(decodeURIComponent(new URL(c.req.url).pathname));
    const file = join(folder, path);
    const isInside = file.startsWith(folder + sep);
    const type = TYPES[extname(file)];
    if (isInside && type !== undefined) {
      const body = await readFile(file).catch(() => undefined);
      if (body === undefined) return c.notFound();
      // Built files carry their content in their name and never change.
      const cache = path.startsWith("/assets/") ? "public, max-age=31536000, immutable" : "no-cache";
      return c.body(new Uint8Array(body), 200, { "content-type": type, "cache-control": cache });
    }
    const page = await readFile(join(folder, "index.html"), "utf8").catch(() => undefined);
    if (page === undefined)
      return c.text("The screens are not built yet. Build them with: npm run build", 503);
    return c.html(page, 200, { "cache-control": "no-cache" });
  });
}
