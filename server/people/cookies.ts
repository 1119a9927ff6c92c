import type { Context } from "hono";
import { deleteCookie, getCookie, setCookie } from "hono/cookie";
import { LONGEST_SESSION_MS } from "#server/people/session-limits.ts";

/** What browsers allow a cookie at most (RFC 6265bis: 400 days). */
const DEVICE_SECONDS = 400 * 24 * 3600;

type Kind = "session" | "device";

/**
 * The secret in a cookie of ours. Over TLS its name begins with __Host-, so that no other page or port without TLS can set
 * it; the port is part of it, because cookies are shared by all servers of one machine, and each bar has its own.
 */
export function secretIn(c: Context, kind: Kind): string | undefined {
  return getCookie(c, nameOf(c, kind));
}

/** Puts a secret into a cookie that no script can read and that no other site's page sends along. */
export function giveSecret(c: Context, kind: Kind, secret: string): void {
  const maxAge = kind === "device" ? DEVICE_SECONDS : LONGEST_SESSION_MS / 1000;
  setCookie(c, nameOf(c, kind), secret, { ...attributes(c), maxAge });
}

export function takeSecret(c: Context, kind: Kind): void {
  deleteCookie(c, nameOf(c, kind), attributes(c));
}

function attributes(c: Context) {
  return { path: "/", httpOnly: true, sameSite: "Strict", secure: isSecure(c) } as const;
}

function nameOf(c: Context, kind: Kind): string {
  const { port } = new URL(c.req.url);
  const name = `ullage-${kind}${port === "" ? "" : `-${port}`}`;
  return isSecure(c) ? `__Host-${name}` : name;
}

function isSecure(c: Context): boolean {
  return new URL(c.req.url).protocol === "https:";
}
