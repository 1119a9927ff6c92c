import type { Db } from "#db/open.ts";
import { LiveBlocks } from "#db/stored/sale-blocks.ts";
import { staffOfBlock, storedStaff } from "#db/stored/sale-staff.ts";
import { unpackBlock } from "#engine/sales/packed/block.ts";
import { DayColumns } from "#engine/sales/packed/day-columns.ts";
import { linesOf, unionOfBlocks, unpackDay } from "#engine/sales/packed/packed-sales.ts";
import { isSum, isSums } from "#engine/sales/packed/sums.ts";
import type { TextTable } from "#engine/sales/packed/texts.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";
import type { BusinessDate } from "#engine/time.ts";

/** The lines of a day as they hold: of all live imports together, in their order. */
export function effectiveLines(db: Db, date: BusinessDate): DayColumns {
  return unionOfBlocks(new LiveBlocks(db).of(date));
}

/** The lines of one import, oldest day first; with who rang them where that is kept. */
export function linesOfImport(db: Db, importId: number, texts: TextTable): SaleLine[] {
  const names = storedStaff(db);
  return blocksOfImport(db, importId).flatMap(({ id, date, packed }) =>
    linesOf(date, unpackDay({ block: packed, staff: staffOfBlock(db, id) }), texts, names),
  );
}

/** The same without sums that a later import replaced: read again in order, they add up to what counts. */
export function countingLinesOfImport(db: Db, importId: number, texts: TextTable): SaleLine[] {
  const live = new LiveBlocks(db);
  const names = storedStaff(db);
  return blocksOfImport(db, importId).flatMap(({ id, date, packed }) => {
    const columns = unpackDay({ block: packed, staff: staffOfBlock(db, id) });
    const blocks = live.of(date);
    const later = blocks.slice(blocks.findIndex((block) => block.id === id) + 1);
    const isReplaced = later.some((block) => block.replacesSums && isSums(unpackBlock(block.packed)));
    if (!isReplaced) return linesOf(date, columns, texts, names);
    const rest = new DayColumns();
    for (let row = 0; row < columns.count; row += 1) if (!isSum(columns, row)) rest.addFrom(columns, row);
    return linesOf(date, rest, texts, names);
  });
}

function blocksOfImport({ sqlite }: Db, importId: number) {
  return sqlite
    .prepare(
      `select sale_blocks.id, sale_blocks.business_date as date, sale_blocks.packed from import_days
       join sale_blocks on sale_blocks.id = import_days.block_id
       where import_days.import_id = ? order by sale_blocks.business_date`,
    )
    .all(importId) as { id: number; date: string; packed: Uint8Array }[];
}
