import { sql } from "drizzle-orm";
import {
  type AnySQLiteColumn,
  check,
  index,
  integer,
  primaryKey,
  sqliteTable,
  text,
} from "drizzle-orm/sqlite-core";
import { dateCheck, id, instantCheck, json } from "#db/schema/columns.ts";

/**
 * What was done, by whom, when, from where and why: one row an act, only ever added. Each row carries the hash of the row
 * before it (db/history/chain.ts), so that a row changed or taken out later shows.
 */
export const history = sqliteTable(
  "history",
  {
    seq: integer("seq").primaryKey(),
    at: text("at").notNull(),
    who: text("who").notNull(),
    role: text("role").notNull(),
    via: text("via").notNull(),
    fromWhere: text("from_where").notNull(),
    act: text("act").notNull(),
    summary: text("summary").notNull(),
    /** The facts that held before and that hold after, for people to read; null where there are none. */
    before: text("before_json"),
    after: text("after_json"),
    reason: text("reason").notNull(),
    /** What it takes to take the act back; null where it cannot be. */
    mend: text("mend_json"),
    undoes: integer("undoes")
      .unique("history_undoes")
      .references((): AnySQLiteColumn => history.seq),
    previousHash: text("previous_hash").notNull(),
    hash: text("hash").notNull(),
  },
  (t) => [
    index("history_by_at").on(t.at),
    instantCheck("history_at", t.at),
    check("history_who", sql`${t.who} <> ''`),
    check("history_hash", sql`length(${t.hash}) = 64`),
  ],
);

/** What an act was about; the first is what it was about most. Part of what the act's hash covers. */
export const historySubjects = sqliteTable(
  "history_subjects",
  {
    seq: integer("seq")
      .notNull()
      .references(() => history.seq),
    place: integer("place").notNull(),
    kind: text("kind").notNull(),
    name: text("name").notNull(),
    folded: text("folded").notNull(),
  },
  (t) => [
    primaryKey({ name: "history_subjects_one", columns: [t.seq, t.place] }),
    index("history_subjects_name").on(t.folded),
  ],
);

/** The past, closed up to a business date; the latest date that was not reopened is the one that holds. */
export const closings = sqliteTable(
  "closings",
  {
    id: id(),
    through: text("through").notNull(),
    /** Counts of the morning after, which the closed week ends on. */
    counts: json<string[]>("counts_json"),
    /** When the last of those counts was taken: what happened up to then is closed too. */
    until: text("until"),
    closedAt: text("closed_at").notNull(),
    closedBy: text("closed_by").notNull(),
    reopenedAt: text("reopened_at"),
    reopenedBy: text("reopened_by"),
    reopenedWhy: text("reopened_why"),
  },
  (t) => [
    dateCheck("closings_through", t.through),
    instantCheck("closings_until", t.until),
    instantCheck("closings_closed_at", t.closedAt),
    instantCheck("closings_reopened_at", t.reopenedAt),
    check(
      "closings_reopened",
      sql`(${t.reopenedAt} is null) = (${t.reopenedBy} is null) and (${t.reopenedAt} is null) = (coalesce(${t.reopenedWhy}, '') = '')`,
    ),
  ],
);
