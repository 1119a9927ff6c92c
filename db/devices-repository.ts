import { and, asc, eq, isNull } from "drizzle-orm";
import { NotFoundError } from "#db/errors.ts";
import { nothingPast, type Told } from "#db/history/acts.ts";
import type { Db } from "#db/open.ts";
import { devices, sessions } from "#db/schema/people.ts";
import { type Doing, inTransaction, momentOf } from "#db/stored/transaction.ts";

export type Device = typeof devices.$inferSelect;

/** Enrols a device and gives its number. */
export async function addDevice(
  db: Db,
  { name, secretHash }: { name: string; secretHash: string },
  doing: Doing,
): Promise<number> {
  return inTransaction(db, () => {
    const { lastInsertRowid } = db.orm
      .insert(devices)
      .values({ name, secretHash, enrolledAt: momentOf(doing), enrolledBy: doing.by })
      .run();
    return { result: Number(lastInsertRowid), told: tell(name, "enrolled", doing) };
  });
}

/** A device by the hash of its secret; undefined when it is none of the bar's (any more). */
export async function deviceOf({ orm }: Db, secretHash: string): Promise<Device | undefined> {
  return orm
    .select()
    .from(devices)
    .where(and(eq(devices.secretHash, secretHash), isNull(devices.removedAt)))
    .get();
}

/** The devices on which a PIN counts. */
export async function listDevices({ orm }: Db): Promise<Device[]> {
  return orm.select().from(devices).where(isNull(devices.removedAt)).orderBy(asc(devices.id)).all();
}

export async function sawDevice({ orm }: Db, id: number, now: string): Promise<void> {
  orm
    .update(devices)
    .set({ lastSeenAt: momentOf({ now }) })
    .where(eq(devices.id, id))
    .run();
}

/** No PIN counts on the device any more, and whoever is signed in there by PIN is out. Throws NotFoundError. */
export async function removeDevice(db: Db, id: number, doing: Doing): Promise<void> {
  inTransaction(db, () => {
    const held = db.orm
      .select()
      .from(devices)
      .where(and(eq(devices.id, id), isNull(devices.removedAt)))
      .get();
    if (held === undefined) throw new NotFoundError(`No device has the number ${id}.`);
    db.orm
      .update(devices)
      .set({ removedAt: momentOf(doing) })
      .where(eq(devices.id, id))
      .run();
    db.orm
      .delete(sessions)
      .where(and(eq(sessions.deviceId, id), eq(sessions.via, "pin")))
      .run();
    return { result: undefined, told: tell(held.name, "removed", doing) };
  });
}

function tell(name: string, what: string, doing: Doing): Told {
  return {
    act: "device changed",
    subjects: [{ kind: "device", name }],
    summary: `${name}: ${what}`,
    at: momentOf(doing),
    touches: nothingPast,
  };
}
