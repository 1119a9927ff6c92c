import type { Role } from "#server/people/actor.ts";
import { say } from "../texts/say.ts";

const ROLE_TEXTS = {
  owner: { name: "people.owner", may: "people.ownerMay" },
  manager: { name: "people.manager", may: "people.managerMay" },
  counter: { name: "people.counter", may: "people.counterMay" },
  prep: { name: "people.prep", may: "people.prepMay" },
} as const;

/** A role by its name. */
export function roleWord(role: Role): string {
  return say(ROLE_TEXTS[role].name);
}

/** What a role may do, in a line. */
export function mayWords(role: Role): string {
  return say(ROLE_TEXTS[role].may);
}

/** The roles to choose from. */
export function roleOptions(): { value: Role; label: string }[] {
  const roles: readonly Role[] = ["owner", "manager", "counter", "prep"];
  return roles.map((value) => ({ value, label: roleWord(value) }));
}
