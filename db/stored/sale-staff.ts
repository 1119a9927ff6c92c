import type { Db } from "#db/open.ts";
import type { LiveBlock } from "#db/stored/sale-blocks.ts";
import { ByteReader, ByteWriter } from "#engine/sales/packed/bytes.ts";
import { TextTable } from "#engine/sales/packed/texts.ts";

/** The names of staff with their numbers. */
export function storedStaff({ sqlite }: Db): TextTable {
  return new TextTable(
    sqlite.prepare("select id, name from staff_names order by id").raw().all() as [number, string][],
  );
}

const writer = new ByteWriter();

/** Keeps who rang the lines of blocks; `names` are those of one file, by the numbers that hold in it. */
export class StaffKeeper {
  readonly #names: TextTable;
  readonly #numbers = new Map<number, number>();
  readonly #add;
  readonly #find;
  readonly #keep;

  constructor({ sqlite }: Db, names: TextTable) {
    this.#names = names;
    this.#add = sqlite.prepare("insert into staff_names (name) values (?) on conflict (name) do nothing");
    this.#find = sqlite.prepare("select id from staff_names where name = ?").pluck();
    this.#keep = sqlite.prepare(
      "insert into sale_staff (block_id, packed) values (?, ?) on conflict (block_id) do update set packed = excluded.packed",
    );
  }

  /** Takes the place of what was known of the block: the file that was read last says it. */
  keep(blockId: number, lines: number, packed: Uint8Array): void {
    const column = new Int32Array(lines);
    new ByteReader(packed).wholeColumn(column);
    writer.clear();
    writer.wholeColumn(
      column.map((number) => this.#kept(number)),
      lines,
    );
    this.#keep.run(blockId, writer.written());
  }

  #kept(number: number): number {
    if (number === 0) return 0;
    const known = this.#numbers.get(number);
    if (known !== undefined) return known;
    const name = this.#names.textOf(number);
    this.#add.run(name);
    const kept = this.#find.get(name) as number;
    this.#numbers.set(number, kept);
    return kept;
  }
}

/** Who rang the lines of a block; null where nobody is kept. */
export function staffOfBlock({ sqlite }: Db, blockId: number): Uint8Array | null {
  const packed = sqlite.prepare("select packed from sale_staff where block_id = ?").pluck().get(blockId);
  return (packed as Uint8Array | undefined) ?? null;
}

/** The blocks of a day with who rang their lines. */
export function withStaff(db: Db, blocks: readonly LiveBlock[]): LiveBlock[] {
  return blocks.map((block) => ({ ...block, staff: staffOfBlock(db, block.id) }));
}

/** Empties what is kept of staff; the sales stay as they are. */
export function clearStaff({ sqlite }: Db): void {
  sqlite.exec("delete from sale_staff; delete from staff_names");
}
