import type { Db } from "#db/open.ts";
import { LiveBlocks, type Turned } from "#db/stored/sale-blocks.ts";
import { unionOfBlocks } from "#engine/sales/packed/packed-sales.ts";
import { type DayTally, packTally, quantityOf, tallyOf } from "#engine/sales/packed/tally.ts";
import type { BusinessDate } from "#engine/time.ts";

/** Reads and writes the tallies of days. */
export class TallyKeeper {
  readonly #of;
  readonly #clear;
  readonly #insert;

  constructor({ sqlite }: Db) {
    this.#of = sqlite.prepare("select lines, packed from tallies where business_date = ?");
    this.#clear = sqlite.prepare("delete from tallies where business_date = ?");
    this.#insert = sqlite.prepare(
      `insert into tallies (business_date, lines, quantity, net_minor, packed) values (?, ?, ?, ?, ?)
       on conflict (business_date) do update
       set lines = excluded.lines, quantity = excluded.quantity, net_minor = excluded.net_minor, packed = excluded.packed`,
    );
  }

  of(date: BusinessDate): { lines: number; packed: Uint8Array } | undefined {
    return this.#of.get(date) as { lines: number; packed: Uint8Array } | undefined;
  }

  keep(date: BusinessDate, lines: number, tally: DayTally): void {
    if (lines === 0) {
      this.#clear.run(date);
      return;
    }
    const netMinor = tally.netMinor.reduce((sum, of) => sum + of, 0);
    this.#insert.run(date, lines, quantityOf(tally), netMinor, packTally(tally));
  }
}

/** A day's tally as it will be, and whether it is another than it was. */
export type NewTally = { businessDate: BusinessDate; lines: number; tally: DayTally; isChanged: boolean };

/** The tallies of some days as if an import were taken back or held again; nothing is written. */
export function talliesWith(db: Db, dates: readonly BusinessDate[], turned: Turned): NewTally[] {
  const live = new LiveBlocks(db);
  const tallies = new TallyKeeper(db);
  return dates.map((businessDate) => {
    const columns = unionOfBlocks(live.of(businessDate, turned));
    const [tally, lines] = [tallyOf(columns), columns.count];
    const held = tallies.of(businessDate);
    const isSame =
      held === undefined
        ? lines === 0
        : held.lines === lines && Buffer.compare(held.packed, packTally(tally)) === 0;
    return { businessDate, lines, tally, isChanged: !isSame };
  });
}

export function keepTallies(db: Db, days: readonly NewTally[]): void {
  const tallies = new TallyKeeper(db);
  for (const { businessDate, lines, tally, isChanged } of days) {
    if (isChanged) tallies.keep(businessDate, lines, tally);
  }
}
