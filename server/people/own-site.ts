import type { Context } from "hono";

const READS = new Set(["GET", "HEAD", "OPTIONS"]);

/**
 * Whether a request may change something on behalf of this browser's user: it comes from our own pages (OWASP, Cross-Site
 * Request Forgery Prevention: Fetch Metadata, and the origin for older browsers). A program that is no browser sends
 * neither header; it has no business with a person's cookie, so that counts only where no cookie is used.
 */
export function isFromOwnPages(c: Context, { hasCookie }: { hasCookie: boolean }): boolean {
  if (READS.has(c.req.method)) return true;
  const [site, origin] = [c.req.header("sec-fetch-site"), c.req.header("origin")];
  if (site !== undefined) return site === "same-origin";
  if (origin !== undefined) return hostOf(origin) === new URL(c.req.url).host;
  return !hasCookie;
}

function hostOf(origin: string): string | undefined {
  return URL.canParse(origin) ? new URL(origin).host : undefined;
}
