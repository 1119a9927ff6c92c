import { isIP, isIPv4 } from "node:net";
import { hostname } from "node:os";
import type { MiddlewareHandler } from "hono";
import { HTTPException } from "hono/http-exception";

/** Whether an address to listen on is this machine's own, which no other device reaches. */
export function isThisMachine(host: string): boolean {
  return host === "localhost" || host === "::1" || (isIPv4(host) && host.startsWith("127."));
}

/** By which names a server may be asked for. */
export type HostRule = { listensHere: boolean; isSecured: boolean; names: readonly string[] };

/**
 * Whether a Host header names this server. A page of another site can point its own name at this machine (DNS rebinding) and
 * would then be of one origin with us; so a name must be one of ours. An address needs no check, nor does HTTPS: there the
 * certificate already says the name. On loopback only loopback's own names and addresses are taken.
 *
 * isOurHost("localhost:4680", { listensHere: true, … }) → true; isOurHost("bar.attacker.example:4680", …) → false
 */
export function isOurHost(host: string | undefined, { listensHere, isSecured, names }: HostRule): boolean {
  if (isSecured) return true;
  const name = nameIn(host);
  if (name === undefined) return false;
  if (names.some((known) => known.toLowerCase() === name)) return true;
  if (name === "localhost" || name.endsWith(".localhost")) return true;
  const bare = name.replace(/^\[|\]$/g, "");
  if (isIP(bare) !== 0) return !listensHere || bare === "::1" || bare.startsWith("127.");
  if (listensHere) return false;
  const own = hostname().toLowerCase();
  return name === own || name === `${own}.local`;
}

/** The name in a Host header without its port; undefined for what is none. */
function nameIn(host: string | undefined): string | undefined {
  if (host === undefined || host === "") return undefined;
  const found = /^(\[[\da-f:.]+\]|[\w.-]+?)\.?(?::\d{1,5})?$/i.exec(host);
  return found?.[1]?.toLowerCase();
}

/** Turns away whoever asks for this server by a name that is not its own. */
export function ownHostOnly(rule: HostRule): MiddlewareHandler {
  return async (c, next) => {
    const host = c.req.header("host") ?? new URL(c.req.url).host;
    if (!isOurHost(host, rule)) {
      throw new HTTPException(421, {
        message:
          "This server does not answer to that name. Use its address, or start it with --name and the name you use.",
      });
    }
    await next();
  };
}
