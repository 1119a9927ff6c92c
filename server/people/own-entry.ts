import { NotFoundError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { listEntries } from "#db/stock-repository.ts";
import type { EntryKind } from "#db/stored/entries.ts";
import type { Delivery } from "#engine/stock/movement.ts";
import type { Actor } from "#server/people/actor.ts";
import { may } from "#server/people/permissions.ts";
import { notAllowed } from "#server/people/refusal.ts";

/** A slip of the finger is seen within the shift; later it is the past, and the manager's. */
const OWN_FOR_MS = 24 * 3_600_000;

/**
 * Throws 403 where somebody may not correct or take back an entry: without the power to change the past, it has to be
 * their own and of the last day.
 */
export async function refuseOthersEntry(
  db: Db,
  { kind, id }: { kind: EntryKind; id: number },
  actor: Actor,
  now: string,
): Promise<void> {
  if (may(actor.role, "changePast")) return;
  const entry = await heldEntry(db, kind, id);
  const ageMs = Date.parse(now) - Date.parse(entry.stamp.enteredAt);
  if (entry.stamp.enteredBy === actor.name && ageMs < OWN_FOR_MS) return;
  throw notAllowed("You may correct your own entries of the last day; for others ask the manager.");
}

/** Corrected facts with the price that was there, where whoever corrects was not shown it. */
export async function withUnseenPrice<Fact extends object>(
  db: Db,
  { kind, id, facts }: { kind: EntryKind; id: number; facts: Fact },
  actor: Actor,
): Promise<Fact> {
  if (kind !== "delivery" || may(actor.role, "seeCosts")) return facts;
  if (!("priceTotalMinor" in facts) || facts.priceTotalMinor !== null) return facts;
  const { fact } = await heldEntry(db, kind, id);
  return { ...facts, priceTotalMinor: (fact as Delivery).priceTotalMinor };
}

async function heldEntry(db: Db, kind: EntryKind, id: number) {
  const entry = (await listEntries(db, kind)).find((one) => one.id === id);
  if (entry !== undefined) return entry;
  throw new NotFoundError(`No ${kind} has the number ${id}, or it was replaced.`);
}
