import type { Device } from "#db/devices-repository.ts";
import { type Acting, acting } from "#db/history/acting.ts";
import type { Role } from "#db/schema/people.ts";

export type { Role } from "#db/schema/people.ts";

/** On whose behalf a request is answered. */
export type Actor = {
  /** Null for a token, and where nobody signed in: the demo. */
  personId: number | null;
  name: string;
  role: Role;
  via: "password" | "pin" | "token" | "terminal" | "demo";
  address: string;
};

/** What is known of whoever asks, signed in or not. */
export type Visitor = {
  actor: Actor | null;
  sessionId: number | null;
  device: Device | null;
  address: string;
  /** Whether a token may only read. */
  readsOnly: boolean;
};

declare module "hono" {
  interface ContextVariableMap {
    /** Set on every route but those that anybody may call. */
    actor: Actor;
    visitor: Visitor;
  }
}

const VIAS: Record<Actor["via"], Acting["via"]> = {
  password: "screen",
  pin: "device",
  token: "token",
  terminal: "terminal",
  demo: "demo",
};

/** An actor in the words of the history. */
export function actingOf({ name, role, via, address }: Actor, device: Device | null): Acting {
  return { who: name, role, via: VIAS[via], from: device?.name ?? address };
}

/** Who made an entry: as it says itself, else whoever is signed in. The demo signs nobody's name. */
export function enteredBy(actor: Actor, given: string): string {
  return given.trim() === "" && actor.via !== "demo" ? actor.name : given;
}

/** Whose name stands beside what carries none of its own: of whoever this request is answered for. */
export function signer(): string {
  const { who, via } = acting();
  return via === "demo" ? "screen" : who;
}

/** The owner that the demo signs in by itself. */
export const DEMO_OWNER: Actor = {
  personId: null,
  name: "Demo owner",
  role: "owner",
  via: "demo",
  address: "127.0.0.1",
};
