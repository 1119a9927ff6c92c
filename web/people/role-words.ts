import type { Role } from "#server/people/actor.ts";

/** What each role may do, in a line. */
export const ROLE_WORDS: Record<Role, string> = {
  owner: "everything, people and reopening a closed week too",
  manager: "runs the bar: costs, specs, sales, orders, corrections",
  counter: "counts, takes deliveries, enters losses; sees no costs",
  prep: "prep list, batch cards, batches, losses; sees no costs",
};

export const ROLES: readonly Role[] = ["owner", "manager", "counter", "prep"];
