import { type SQL, sql } from "drizzle-orm";
import { type AnySQLiteColumn, check, integer, real, text } from "drizzle-orm/sqlite-core";

/** What several tables have in common: how their columns are made and what they are held to. */

export const id = () => integer("id").primaryKey();

/** A name as spelled, and folded, which is what makes it one name. */
export const named = () => ({ name: text("name").notNull(), folded: text("folded").notNull() });

export const json = <T>(name: string) => text(name, { mode: "json" }).$type<T>().notNull();

export const yesNo = (name: string) => integer(name, { mode: "boolean" }).notNull();

export const amount = (name: string) => real(name);

/**
 * What every entry of a movement or count carries: who entered it and when, and, if it corrects another, which one and why.
 * An entry that takes another back has the same facts and is marked as withdrawn.
 */
export const entry = () => ({
  enteredAt: text("entered_at").notNull(),
  enteredBy: text("entered_by").notNull(),
  reason: text("reason").notNull().default(""),
  isWithdrawn: yesNo("is_withdrawn").default(false),
  /** What the sender calls it, so that one sent twice is one. */
  entryKey: text("entry_key").unique(),
});

export const entryChecks = (
  table: string,
  columns: { enteredAt: AnySQLiteColumn; isWithdrawn: AnySQLiteColumn; replacesId: AnySQLiteColumn },
) => [
  instantCheck(`${table}_entered_at`, columns.enteredAt),
  check(`${table}_withdrawn`, sql`${columns.isWithdrawn} = 0 or ${columns.replacesId} is not null`),
];

const DATE = "[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]";
const INSTANT = `${DATE}T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z`;
const CLOCK = "[0-2][0-9]:[0-5][0-9]";

export const dateCheck = (name: string, column: AnySQLiteColumn) => globCheck(name, column, DATE);
export const instantCheck = (name: string, column: AnySQLiteColumn) => globCheck(name, column, INSTANT);
export const clockCheck = (name: string, column: AnySQLiteColumn) => globCheck(name, column, CLOCK);

function globCheck(name: string, column: AnySQLiteColumn, pattern: string) {
  return check(name, sql`${column} glob ${sql.raw(`'${pattern}'`)}`);
}

export const oneOfCheck = (name: string, column: AnySQLiteColumn, words: readonly string[]) =>
  check(name, sql`${column} in (${sql.raw(words.map((word) => `'${word}'`).join(", "))})`);

export const aboveZero = (name: string, column: AnySQLiteColumn) => check(name, sql`${column} > 0`);
export const notNegative = (name: string, column: AnySQLiteColumn) => check(name, sql`${column} >= 0`);

/** Null as a text that no name or date is, so that a unique index sees two nulls as equal. */
export const orNone = (column: AnySQLiteColumn): SQL => sql`coalesce(${column}, '')`;
