import type { Db } from "#db/open.ts";
import { statement } from "#db/stored/statement.ts";

// Tries are no business act: nothing here counts as a change of the book, nor stands in its history.

/** Wrong tries that are counted together: how many, and when the last one was. */
export type WrongTries = { times: number; lastMs: number };

/** What is forgotten: tries older than a moment, and the oldest of more than so many. */
export type Forgetting = { beforeMs: number; keptMost: number };

/**
 * Counts one more try of each key, unless what is kept of them asks to wait; gives that wait in ms, 0 when the try may go on.
 * All in one transaction, so that many tries at once are no way around it. `keyHashes` are SHA-256, as hex.
 */
export async function countTry(
  db: Db,
  keyHashes: readonly string[],
  waitMsFor: (held: readonly (WrongTries | undefined)[]) => number,
  { nowMs, forgetting }: { nowMs: number; forgetting: Forgetting },
): Promise<number> {
  return db.sqlite
    .transaction(() => {
      statement(db, "delete from sign_in_tries where last_ms < ?").run(forgetting.beforeMs);
      const held = keyHashes.map((key) => statement(db, HELD).get(key) as WrongTries | undefined);
      const waitMs = waitMsFor(held);
      if (waitMs > 0) return waitMs;
      for (const key of keyHashes) statement(db, COUNT).run({ key, nowMs });
      statement(db, DROP).run(forgetting.keptMost);
      return 0;
    })
    .immediate();
}

/** Forgets the tries of one key, whose next wrong one is the first again. */
export async function forgetTries(db: Db, keyHash: string): Promise<void> {
  statement(db, "delete from sign_in_tries where key_hash = ?").run(keyHash);
}

/** Takes one try back, which proved right. */
export async function takeTryBack(db: Db, keyHash: string): Promise<void> {
  statement(db, "update sign_in_tries set times = max(0, times - 1) where key_hash = ?").run(keyHash);
}

const HELD = "select times, last_ms as lastMs from sign_in_tries where key_hash = ?";
const COUNT = `insert into sign_in_tries (key_hash, times, last_ms) values (@key, 1, @nowMs)
  on conflict (key_hash) do update set times = times + 1, last_ms = @nowMs`;
const DROP = `delete from sign_in_tries
  where id in (select id from sign_in_tries order by last_ms desc limit -1 offset ?)`;
