import { headOf } from "#db/history/chain.ts";
import type { Db } from "#db/open.ts";

/** What a backup says of itself, to be compared with what is found in it when it is brought back. */
export type BackupProof = {
  madeAt: string;
  program: string;
  /** Rows by table. */
  rows: Record<string, number>;
  /** The last act of the history. */
  historyHead: { seq: number; hash: string };
  /** The latest variance as it was told then; null where there are no two counts yet. */
  variance: { of: string; unexplainedCost: number; digest: string } | null;
};

const TABLE = "backup_proof";

/** How many rows each table holds, the program's own marks left out. */
export function rowCounts({ sqlite }: Db): Record<string, number> {
  const tables = sqlite
    .prepare(
      `select name from sqlite_master where type = 'table' and name not like 'sqlite~_%' escape '~'
       and name not like '~_~_%' escape '~' and name <> '${TABLE}' order by name`,
    )
    .pluck()
    .all() as string[];
  const count = (table: string): number =>
    Number(sqlite.prepare(`select count(*) from "${table}"`).pluck().get());
  return Object.fromEntries(tables.map((table) => [table, count(table)]));
}

/** Writes a proof into a copy of the database; never into the one that is in use. */
export function writeProof({ sqlite }: Db, proof: BackupProof): void {
  sqlite.exec(`drop table if exists ${TABLE}; create table ${TABLE} (proof text not null) strict`);
  sqlite.prepare(`insert into ${TABLE} (proof) values (?)`).run(JSON.stringify(proof));
}

/** Takes the proof out of a copy, which then is a database like any other; undefined where none was written. */
export function takeProof({ sqlite }: Db): BackupProof | undefined {
  const has = sqlite.prepare("select 1 from sqlite_master where type = 'table' and name = ?").get(TABLE);
  if (has === undefined) return undefined;
  const text = sqlite.prepare(`select proof from ${TABLE}`).pluck().get();
  sqlite.exec(`drop table ${TABLE}`);
  return typeof text === "string" ? (JSON.parse(text) as BackupProof) : undefined;
}

/** Where a database differs from its proof in what can be counted; empty when it does not. */
export function differences(db: Db, proof: BackupProof): string[] {
  const rows = rowCounts(db);
  const head = headOf(db);
  const counts = Object.entries(proof.rows)
    .filter(([table, count]) => rows[table] !== count)
    .map(([table, count]) => `${table} has ${rows[table] ?? 0} rows, and had ${count} when it was backed up`);
  if (head.seq === proof.historyHead.seq && (head.seq === 0 || head.hash === proof.historyHead.hash))
    return counts;
  return [
    ...counts,
    `its history ends at act ${head.seq}, and ended at act ${proof.historyHead.seq} otherwise`,
  ];
}
