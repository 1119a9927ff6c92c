import { NotFoundError } from "#db/errors.ts";
import { nothingPast } from "#db/history/acts.ts";
import type { Db } from "#db/open.ts";
import { venues } from "#db/schema/venue.ts";
import { LiveBlocks, storedTexts } from "#db/stored/sale-blocks.ts";
import { clearStaff, storedStaff, withStaff } from "#db/stored/sale-staff.ts";
import { type Doing, inTransaction, momentOf, readingAlone } from "#db/stored/transaction.ts";
import { linesOf, unionOfBlocks } from "#engine/sales/packed/packed-sales.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";
import type { BusinessDate } from "#engine/time.ts";

const STAFF = { kind: "venue", name: "names of staff" } as const;

/** The lines of a business day as they count, from all files together, with who rang them where that is kept. */
export async function salesOfDay(db: Db, date: BusinessDate): Promise<SaleLine[]> {
  return readingAlone(db, () => {
    const blocks = withStaff(db, new LiveBlocks(db).of(date));
    return linesOf(date, unionOfBlocks(blocks), storedTexts(db), storedStaff(db));
  });
}

/** How many names of staff are kept, and on how many business days. */
export async function keptStaff({ sqlite }: Db): Promise<{ names: number; days: number }> {
  return sqlite
    .prepare(
      `select (select count(*) from staff_names) as names, count(distinct business_date) as days
       from sale_staff join sale_blocks on sale_blocks.id = sale_staff.block_id`,
    )
    .get() as { names: number; days: number };
}

/**
 * Keeps names of staff with the sales of files to come, or reads them no longer; kept ones stay until they are erased. Not among
 * what the history undoes, so that nobody but the owner turns it on again. Throws NotFoundError without a venue.
 */
export async function switchStaff(db: Db, keeps: boolean, { now }: Pick<Doing, "now">): Promise<void> {
  inTransaction(db, () => {
    const { changes } = db.orm.update(venues).set({ keepStaff: keeps }).run();
    if (changes === 0) throw new NotFoundError("The database holds no venue yet; load a book first.");
    return {
      result: undefined,
      told: {
        act: "staff names switched",
        subjects: [STAFF],
        summary: keeps
          ? "names of staff are kept with sales from now on"
          : "names of staff are read no longer",
        after: { keepStaff: keeps },
        at: momentOf({ now }),
        mend: null,
        touches: nothingPast,
      },
    };
  });
}

/**
 * Erases all names of staff that are kept with sales, for good: the sales stay, and nothing can bring the names back but the
 * till's own files and backups made before. Gives how many names there were.
 */
export async function eraseStaff(db: Db, { now }: Pick<Doing, "now">): Promise<{ names: number }> {
  const { names, days } = await keptStaff(db);
  // Names that were deleted would otherwise still stand in the file until their room is used again.
  db.sqlite.pragma("secure_delete = on");
  try {
    return inTransaction(db, () => {
      clearStaff(db);
      return {
        result: { names },
        told: {
          act: "staff names erased",
          subjects: [STAFF],
          summary: `names of staff erased: ${names}; business days: ${days}`,
          at: momentOf({ now }),
          mend: null,
          touches: nothingPast,
        },
      };
    });
  } finally {
    db.sqlite.pragma("secure_delete = off");
  }
}
