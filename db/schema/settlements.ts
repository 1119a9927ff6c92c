import { sql } from "drizzle-orm";
import { check, integer, real, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { id, instantCheck, json, oneOfCheck } from "#db/schema/columns.ts";
import { CAUSE_KINDS, type Cause, type CauseKind } from "#engine/variance/causes/cause.ts";
import type { Correction } from "#engine/variance/causes/correction.ts";

/**
 * What the check of a likely cause showed, between which counts, and what was changed in the book for it. It names
 * things by their names: a book that is loaded anew gives its things other numbers, and what was learned stays.
 */
export const settlements = sqliteTable(
  "settlements",
  {
    id: id(),
    settledAt: text("settled_at").notNull(),
    settledBy: text("settled_by").notNull(),
    answer: text("answer").$type<"confirmed" | "refuted">().notNull(),
    opening: text("opening").notNull(),
    closing: text("closing").notNull(),
    kind: text("kind").$type<CauseKind>().notNull(),
    what: json<Cause["what"]>("what_json"),
    countName: text("count_name"),
    size: real("size").notNull(),
    unit: text("unit").notNull(),
    /** Null where nothing in the book was changed. */
    correction: text("correction_json", { mode: "json" }).$type<Correction>(),
    /** The entry that the correction made, where its sheet has numbered entries. */
    entryId: integer("entry_id"),
    takenBackAt: text("taken_back_at"),
  },
  (t) => [
    instantCheck("settlements_settled_at", t.settledAt),
    oneOfCheck("settlements_answer", t.answer, ["confirmed", "refuted"]),
    oneOfCheck("settlements_kind", t.kind, CAUSE_KINDS),
    check("settlements_size", sql`${t.size} > 0`),
    check("settlements_taken_back", sql`${t.takenBackAt} is null or ${t.takenBackAt} >= ${t.settledAt}`),
  ],
);
