import { ConflictError, NotFoundError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import type { Turned } from "#db/stored/sale-blocks.ts";
import { salesState } from "#db/stored/sales.ts";
import { keepTallies, type NewTally, talliesWith } from "#db/stored/tally-keeper.ts";
import { type Doing, momentOf } from "#db/stored/transaction.ts";
import type { BusinessDate } from "#engine/time.ts";

/** A business day of an import, and whether its sales are others than before. */
export type TurnedDay = { businessDate: BusinessDate; isChanged: boolean };

/** What taking an import back, or letting it hold again, makes of its days; worked out by reading alone. */
export type TurnPlan = {
  /** Of the sales it was worked out from; written to them only while they are the same. */
  state: string;
  days: readonly NewTally[];
};

/** Works out what turning an import will change, so that others can write meanwhile. Nothing is written. */
export function planTurn(db: Db, turned: Turned): TurnPlan {
  const dates = db.sqlite
    .prepare("select business_date from import_days where import_id = ? order by business_date")
    .pluck()
    .all(turned.importId) as BusinessDate[];
  return { state: salesState(db), days: talliesWith(db, dates, turned) };
}

/**
 * Takes an import back, or, with null, lets it hold again; its days are computed anew, by a plan while the sales are still
 * those of it. To be called inside a transaction. Throws NotFoundError, and ConflictError when it stands so already.
 */
export function setUndone(
  db: Db,
  importId: number,
  doing: Doing | null,
  plan?: TurnPlan,
): { file: string; days: readonly TurnedDay[] } {
  const found = db.sqlite.prepare("select file, undone_at from sale_imports where id = ?").get(importId) as
    | { file: string; undone_at: string | null }
    | undefined;
  if (found === undefined)
    throw new NotFoundError(`There is no import ${importId}; list the imports to see their numbers.`);
  const { file } = found;
  if (doing !== null && found.undone_at !== null) {
    throw new ConflictError(`Import ${importId} (${file}) was already undone at ${found.undone_at}.`);
  }
  if (doing === null && found.undone_at === null) {
    throw new ConflictError(`Import ${importId} (${file}) holds already.`);
  }
  const isPlanned = plan !== undefined && plan.state === salesState(db);
  const { days } = isPlanned ? plan : planTurn(db, { importId, isUndone: doing !== null });
  db.sqlite
    .prepare("update sale_imports set undone_at = ?, undone_by = ? where id = ?")
    .run(doing === null ? null : momentOf(doing), doing?.by ?? null, importId);
  keepTallies(db, days);
  return { file, days };
}

/** How many lines an import has; 0 where there is none. */
export function linesIn({ sqlite }: Db, importId: number): number {
  return Number(sqlite.prepare("select lines from sale_imports where id = ?").pluck().get(importId) ?? 0);
}

export function changedOf(days: readonly TurnedDay[]): BusinessDate[] {
  return days.filter(({ isChanged }) => isChanged).map(({ businessDate }) => businessDate);
}

/** "week-47.csv: 7 days, 2026-11-16 to 2026-11-22" */
export function importWords(file: string, days: readonly TurnedDay[]): string {
  return `${file}: ${daysWords(days.map(({ businessDate }) => businessDate))}`;
}

export function daysWords(dates: readonly BusinessDate[]): string {
  const [first, last] = [dates[0], dates.at(-1)];
  if (first === undefined || last === undefined) return "no day";
  return first === last ? `of ${first}` : `${dates.length} days, ${first} to ${last}`;
}
