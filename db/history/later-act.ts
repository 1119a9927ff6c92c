import type { Mend } from "#db/history/acts.ts";
import type { Db } from "#db/open.ts";

/** Says which act after another changed the same row. */
export function laterActOn({ sqlite }: Db, seq: number, row: { table: string; id: number }): string {
  const later = sqlite
    .prepare("select seq, act, summary, who, mend_json as mend from history where seq > ? order by seq")
    .all(seq) as { seq: number; act: string; summary: string; who: string; mend: string | null }[];
  const found = later.find(({ mend }) => mend !== null && touchesRow(JSON.parse(mend) as Mend, row));
  if (found === undefined) return "It was changed since, by more than can be undone at once.";
  return `It was changed since: ${found.act} by ${found.who} (no. ${found.seq}, ${found.summary}).`;
}

function touchesRow(mend: Mend, { table, id }: { table: string; id: number }): boolean {
  return "rows" in mend && mend.rows.some((row) => row.table === table && row.id === id);
}

/** The act that loaded the whole book last, 0 without one: numbers of rows and entries are others since. */
export function lastLoad({ sqlite }: Db): number {
  return Number(
    sqlite.prepare("select coalesce(max(seq), 0) from history where act = 'book loaded'").pluck().get(),
  );
}
