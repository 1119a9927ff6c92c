import { createHash } from "node:crypto";
import type { Db } from "#db/open.ts";
import { packBlock } from "#engine/sales/packed/block.ts";
import { DayColumns } from "#engine/sales/packed/day-columns.ts";
import { type HeldBlock, type PackedDay, unpackDay } from "#engine/sales/packed/packed-sales.ts";
import { packStaff } from "#engine/sales/packed/staff.ts";
import { tallyOf } from "#engine/sales/packed/tally.ts";
import { TextTable } from "#engine/sales/packed/texts.ts";
import type { BusinessDate } from "#engine/time.ts";

/** The texts of the till with their numbers. */
export function storedTexts({ sqlite }: Db): TextTable {
  return new TextTable(
    sqlite.prepare("select id, text from sale_names order by id").raw().all() as [number, string][],
  );
}

/** Texts as they are to be kept: those to be added, and other numbers for some, where another import took theirs. */
export type SettledTexts = {
  table: TextTable;
  added: readonly (readonly [number, string])[];
  numberOf: ((number: number) => number) | undefined;
};

/** Which texts of a table are new, and by which numbers; nothing is written. */
export function settleTexts(db: Db, texts: TextTable): SettledTexts {
  const [first] = texts.added;
  const highest = Number(db.sqlite.prepare("select coalesce(max(id), 0) from sale_names").pluck().get());
  if (first === undefined || first[0] === highest + 1)
    return { table: texts, added: texts.added, numberOf: undefined };
  const table = storedTexts(db);
  const moved = new Map(texts.added.map(([number, text]) => [number, table.numberOf(text)]));
  return { table, added: table.added, numberOf: (number) => moved.get(number) ?? number };
}

export function keepTexts({ sqlite }: Db, { added }: SettledTexts): void {
  const insert = sqlite.prepare("insert into sale_names (id, text) values (?, ?)");
  for (const [number, text] of added) insert.run(number, text);
}

/** A day's lines with other numbers for their texts. */
export function renumbered(day: PackedDay, numberOf: (number: number) => number): PackedDay {
  const held = unpackDay(day);
  const columns = new DayColumns();
  for (let row = 0; row < held.count; row += 1) {
    held.ringName[row] = numberOf(held.ringName[row] ?? 0);
    held.modifiers[row] = numberOf(held.modifiers[row] ?? 0);
    columns.addFrom(held, row);
  }
  const block = packBlock(columns);
  return { ...day, block, staff: packStaff(columns), tally: tallyOf(columns) };
}

/** Keeps a day's lines, or finds that another file has the same; gives the block's number. */
export class BlockKeeper {
  readonly #find;
  readonly #insert;

  constructor({ sqlite }: Db) {
    this.#find = sqlite.prepare("select id from sale_blocks where business_date = ? and digest = ?").pluck();
    this.#insert = sqlite.prepare(
      "insert into sale_blocks (business_date, digest, lines, packed) values (?, ?, ?, ?)",
    );
  }

  find({ businessDate, block }: PackedDay): number | undefined {
    return this.#find.get(businessDate, digestOf(block)) as number | undefined;
  }

  keep(day: PackedDay): number {
    const known = this.find(day);
    if (known !== undefined) return known;
    const { businessDate, block, lines } = day;
    return Number(this.#insert.run(businessDate, digestOf(block), lines, block).lastInsertRowid);
  }
}

function digestOf(block: Uint8Array): string {
  return createHash("sha256").update(block).digest("hex");
}

/** A block that holds on a day. */
export type LiveBlock = HeldBlock & { id: number };

/** An import as if it were taken back, or held again. */
export type Turned = { importId: number; isUndone: boolean };

/** The blocks that hold on a day: of all imports that are not undone, each once, in the order in which they were first read in. */
export class LiveBlocks {
  readonly #of;

  constructor({ sqlite }: Db) {
    // Of the columns that are not grouped, SQLite takes the row that has the minimum.
    this.#of = sqlite.prepare(
      `select sale_blocks.id, sale_blocks.packed, sale_imports.replaces_sums as replacesSums, min(sale_imports.id)
       from import_days
       join sale_imports on sale_imports.id = import_days.import_id
       join sale_blocks on sale_blocks.id = import_days.block_id
       where import_days.business_date = @date
         and iif(sale_imports.id = @turned, @holds, sale_imports.undone_at is null)
       group by sale_blocks.id order by min(sale_imports.id)`,
    );
  }

  of(date: BusinessDate, turned?: Turned): LiveBlock[] {
    const rows = this.#of.all({
      date,
      turned: turned?.importId ?? null,
      holds: turned?.isUndone === false ? 1 : 0,
    }) as { id: number; packed: Uint8Array; replacesSums: number }[];
    return rows.map(({ id, packed, replacesSums }) => ({ id, packed, replacesSums: replacesSums === 1 }));
  }
}
