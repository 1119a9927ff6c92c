import type { Link } from "#server/people/links.ts";

/** Where a server listens unless told otherwise. */
const USUAL = "http://127.0.0.1:4680";

/** What to do with a one-time link, for a terminal: the address on its own line, so that it can be copied. */
export function linkWords({ path, expiresAt }: Link, url = ""): string {
  const place =
    url === ""
      ? "It is for a server at this machine's usual address; put another's in front of /welcome.\n"
      : "";
  const until = expiresAt.slice(0, 16).replace("T", " ");
  return `Open this once, before ${until} UTC, and give it to nobody else:\n\n  ${url || USUAL}${path}\n\n${place}`.trimEnd();
}
