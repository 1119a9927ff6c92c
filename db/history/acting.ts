import { AsyncLocalStorage } from "node:async_hooks";
import { hostname, userInfo } from "node:os";

/** By which way an act came in. */
export const VIAS = ["terminal", "screen", "device", "token", "demo", "schedule"] as const;
export type Via = (typeof VIAS)[number];

/** On whose behalf something is done: what the history tells of every act. */
export type Acting = {
  /** The person, or the name of the token or schedule. */
  who: string;
  /** What that person may do: "owner", "manager", "counter", "prep"; "terminal" for whoever holds the file itself. */
  role: string;
  via: Via;
  /** The machine, address or enrolled device it came from. */
  from: string;
  /** Why, where the act as such carries no reason of its own. */
  reason?: string;
};

const current = new AsyncLocalStorage<Acting>();

/**
 * Runs `act`, and all that it awaits, on somebody's behalf. A thread of its own does not inherit this: hand `acting()` over
 * and call `actingAs` there. Throws Error for a person without a name, so that nothing is done anonymously.
 */
export function actingAs<T>(who: Acting, act: () => T): T {
  if (who.who.trim() === "") throw new Error("Somebody without a name acts; name the person or the token.");
  return current.run(who, act);
}

/** On whose behalf this runs; outside any `actingAs`, the user of the operating system at the terminal. */
export function acting(): Acting {
  return current.getStore() ?? atTerminal();
}

/** Whoever holds the file and a terminal: the operating system knows the name. */
export function atTerminal(): Acting {
  return { who: systemUser(), role: "terminal", via: "terminal", from: hostname() || "this machine" };
}

function systemUser(): string {
  try {
    return userInfo().username || fromNumber();
  } catch {
    // A container may run under a number that no account has.
    return fromNumber();
  }
}

function fromNumber(): string {
  return `user ${process.getuid?.() ?? "unknown"}`;
}
