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
 * without tries forgets them. At four free tries that is about 100 guesses a day and account. Kept in memory: who
 * can start the server anew holds the keys anyway.
 */
export class Throttle {
  readonly #wrong = new Map<string, { times: number; lastMs: number }>();

  /**
   * Seconds to wait; 0 when the try may go on. Then it counts as wrong until `right` says otherwise, so that many tries
   * at once are no way around it.
   */
  begin(tried: readonly Tried[], nowMs: number): number {
    const waitMs = Math.max(...tried.map((one) => this.#waitMs(one, nowMs)));
    if (waitMs > 0) return Math.ceil(waitMs / SECOND_MS);
    for (const { key } of tried) this.#count(key, nowMs);
    return 0;
  }

  /** The try was right: the account starts anew, the address takes back this one alone. */
  right([account, ...others]: readonly [Tried, ...Tried[]]): void {
    this.#wrong.delete(account.key);
    for (const { key } of others) {
      const held = this.#wrong.get(key);
      if (held !== undefined) this.#wrong.set(key, { ...held, times: held.times - 1 });
    }
  }

  #waitMs({ key, free }: Tried, nowMs: number): number {
    const held = this.#wrong.get(key);
    if (held === undefined || held.times < free || nowMs - held.lastMs > FORGOTTEN_AFTER_MS) return 0;
    const delayMs = Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** (held.times - free));
    // A clock that was set back must not keep anybody out for longer.
    return Math.min(delayMs, held.lastMs + delayMs - nowMs);
  }

  #count(key: string, nowMs: number): void {
    const held = this.#wrong.get(key);
    const isOld = held === undefined || nowMs - held.lastMs > FORGOTTEN_AFTER_MS;
    // Put at the end, so that what is dropped when there are too many is the oldest.
    this.#wrong.delete(key);
    this.#wrong.set(key, { times: isOld ? 1 : held.times + 1, lastMs: nowMs });
    const [oldest] = this.#wrong.keys();
    if (this.#wrong.size > KEPT_MOST && oldest !== undefined) this.#wrong.delete(oldest);
  }
}

/** A wait in words. 40 → "40 seconds", 90 → "2 minutes". */
export function waitWords(seconds: number): string {
  if (seconds < 60) return seconds === 1 ? "1 second" : `${seconds} seconds`;
  const minutes = Math.ceil(seconds / 60);
  return minutes === 1 ? "1 minute" : `${minutes} minutes`;
}
