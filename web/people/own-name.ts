import type { SignedIn } from "./signed-in.ts";

/** Whoever is signed in enters and counts, unless somebody else says so; in the demo nobody is somebody. */
export function ownName(me: SignedIn | null): string {
  return me === null || me.via === "demo" ? "" : me.name;
}
