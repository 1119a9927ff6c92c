import type { Db } from "#db/open.ts";
import { countTry, forgetTries, takeTryBack, type WrongTries } from "#db/sign-in-tries-repository.ts";
import { secretHash } from "#server/people/secrets.ts";

const SECOND_MS = 1000;
const FIRST_WAIT_MS = 5 * SECOND_MS;
const LONGEST_WAIT_MS = 15 * 60 * SECOND_MS;
const FORGOTTEN_AFTER_MS = 24 * 60 * 60 * SECOND_MS;
const KEPT_MOST = 20_000;

/** Whose tries are counted together, and how many wrong ones cost no wait. */
export type Tried = { key: string; free: number };

/** An account, apart for each device of the bar, so that strangers who try it elsewhere keep nobody out. */
export function accountTried(account: string, deviceId: number | undefined): Tried {
  return { key: `account ${account} ${deviceId ?? "elsewhere"}`, free: 4 };
}

/** An address; all phones of a bar may share one. */
export function addressTried(address: string): Tried {
  return { key: `address ${address}`, free: 20 };
}

/**
 * Makes guessing slow: after a few wrong tries each next one has to wait twice as long, up to a quarter of an hour; a day
 * without tries forgets them. At four free tries that is about 100 guesses a day and account. Kept in the database, so that
 * pulling the plug forgives nothing.
 */
export class Throttle {
  readonly #db: Db;

  constructor(db: Db) {
    this.#db = db;
  }

  /**
   * Seconds to wait; 0 when the try may go on. Then it counts as wrong until `right` says otherwise, so that many tries
   * at once are no way around it.
   */
  async begin(tried: readonly Tried[], nowMs: number): Promise<number> {
    const forgetting = { beforeMs: nowMs - FORGOTTEN_AFTER_MS, keptMost: KEPT_MOST };
    const longest = (held: readonly (WrongTries | undefined)[]): number =>
      Math.max(...tried.map(({ free }, at) => waitMsOf(held[at], free, nowMs)));
    const waitMs = await countTry(this.#db, tried.map(hashOf), longest, { nowMs, forgetting });
    return Math.ceil(waitMs / SECOND_MS);
  }

  /** The try was right: the account starts anew, the address takes back this one alone. */
  async right([account, ...others]: readonly [Tried, ...Tried[]]): Promise<void> {
    await forgetTries(this.#db, hashOf(account));
    for (const other of others) await takeTryBack(this.#db, hashOf(other));
  }
}

/** What somebody typed for a name may have been their password, so it is kept as a hash. */
function hashOf({ key }: Tried): string {
  return secretHash(key);
}

function waitMsOf(held: WrongTries | undefined, free: number, nowMs: number): number {
  if (held === undefined || held.times < free) return 0;
  const delayMs = Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** (held.times - free));
  // A clock that was set back must not keep anybody out for longer.
  return Math.max(0, Math.min(delayMs, held.lastMs + delayMs - nowMs));
}

/** A wait in words. 40 → "40 seconds", 90 → "2 minutes". */
export function waitWords(seconds: number): string {
  if (seconds < 60) return seconds === 1 ? "1 second" : `${seconds} seconds`;
  const minutes = Math.ceil(seconds / 60);
  return minutes === 1 ? "1 minute" : `${minutes} minutes`;
}
