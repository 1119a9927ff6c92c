import type { Db } from "#db/open.ts";
import { type HashCost, hashSecret, newSecret } from "#server/people/secrets.ts";
import { Throttle } from "#server/people/throttle.ts";

/** What signing in works with: where people are kept, the clock, what a hash costs, and who tried how often. */
export type Door = {
  db: Db;
  now: () => Date;
  hashing: HashCost;
  throttle: Throttle;
  /** Compared with for names that nobody has, so that these take as long. */
  nobody: () => Promise<string>;
};

export function openDoor({ db, now, hashing }: Pick<Door, "db" | "now" | "hashing">): Door {
  let nobody: Promise<string> | undefined;
  return {
    db,
    now,
    hashing,
    throttle: new Throttle(db),
    nobody: () => {
      nobody ??= hashSecret(newSecret(), hashing);
      return nobody;
    },
  };
}
