import type { Statement } from "better-sqlite3";
import type { Db } from "#db/open.ts";

const ready = new WeakMap<Db, Map<string, Statement>>();

/** A statement that every entry runs, made ready once for each connection. `text` is a constant: what it takes is bound. */
export function statement(db: Db, text: string): Statement {
  const ofDb = ready.get(db) ?? new Map<string, Statement>();
  ready.set(db, ofDb);
  const made = ofDb.get(text) ?? db.sqlite.prepare(text);
  ofDb.set(text, made);
  return made;
}
