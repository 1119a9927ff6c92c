import { createHash } from "node:crypto";
import type { Db } from "#db/open.ts";
import { packBlock, unpackBlock } from "#engine/sales/packed/block.ts";
import { DayColumns } from "#engine/sales/packed/day-columns.ts";
import type { PackedDay } from "#engine/sales/packed/packed-sales.ts";
import { tallyOf } from "#engine/sales/packed/tally.ts";
import { TextTable } from "#engine/sales/packed/texts.ts";
import type { BusinessDate } from "#engine/time.ts";

/** The texts of the till with their numbers. */
export function storedTexts({ sqlite }: Db): TextTable {
  return new TextTable(
    sqlite.prepare("select id, text from sale_names order by id").raw().all() as [number, string][],
  );
}

/**
 * Keeps the texts that are new in a table, with the numbers they got there.
 *
 * Where another import took those numbers since the table was read, gives the numbers that the texts have now.
 */
export function keepTexts(db: Db, texts: TextTable): ((number: number) => number) | undefined {
  const { sqlite } = db;
  const insert = sqlite.prepare("insert into sale_names (id, text) values (?, ?)");
  const [first] = texts.added;
  const highest = Number(sqlite.prepare("select coalesce(max(id), 0) from sale_names").pluck().get());
  if (first === undefined) return undefined;
  if (first[0] === highest + 1) {
    for (const [number, text] of texts.added) insert.run(number, text);
    return undefined;
  }
  const now = storedTexts(db);
  const moved = new Map(texts.added.map(([number, text]) => [number, now.numberOf(text)]));
  for (const [number, text] of now.added) insert.run(number, text);
  return (number) => moved.get(number) ?? number;
}

/** A day's lines with other numbers for their texts. */
export function renumbered(day: PackedDay, numberOf: (number: number) => number): PackedDay {
  const held = unpackBlock(day.block);
  const columns = new DayColumns();
  for (let row = 0; row < held.count; row += 1) {
    held.ringName[row] = numberOf(held.ringName[row] ?? 0);
    held.modifiers[row] = numberOf(held.modifiers[row] ?? 0);
    columns.addFrom(held, row);
  }
  return { ...day, block: packBlock(columns), tally: tallyOf(columns) };
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

/** The blocks that hold on a day: of all imports that are not undone, each once, oldest first. */
export class LiveBlocks {
  readonly #of;

  constructor({ sqlite }: Db) {
    this.#of = sqlite.prepare(
      `select distinct sale_blocks.id, sale_blocks.packed from import_days
       join sale_imports on sale_imports.id = import_days.import_id
       join sale_blocks on sale_blocks.id = import_days.block_id
       where import_days.business_date = ? and sale_imports.undone_at is null
       order by sale_blocks.id`,
    );
  }

  of(date: BusinessDate): { id: number; packed: Uint8Array }[] {
    return this.#of.all(date) as { id: number; packed: Uint8Array }[];
  }
}
