import { and, asc, eq, isNull } from "drizzle-orm";
import { ConflictError, NotFoundError } from "#db/errors.ts";
import { nothingPast, type Told } from "#db/history/acts.ts";
import type { Db } from "#db/open.ts";
import { apiTokens } from "#db/schema/people.ts";
import { type Doing, inTransaction, momentOf } from "#db/stored/transaction.ts";
import { foldName } from "#engine/name.ts";

export type ApiToken = typeof apiTokens.$inferSelect;
type NewToken = Pick<ApiToken, "name" | "secretHash" | "role" | "scope">;

/** Keeps a token by its hash. Throws ConflictError when one of that name works already. */
export async function addToken(db: Db, token: NewToken, doing: Doing): Promise<number> {
  return inTransaction(db, () => {
    const { name, role, scope } = token;
    if (tokenNamed(db, name) !== undefined) {
      throw new ConflictError(`A token named ${name} works already; revoke it first, or take another name.`);
    }
    const { lastInsertRowid } = db.orm
      .insert(apiTokens)
      .values({ ...token, folded: foldName(name), madeAt: momentOf(doing), madeBy: doing.by })
      .run();
    const told = tell(name, `made, to ${scope} as ${role}`, doing);
    return { result: Number(lastInsertRowid), told };
  });
}

/** A token by its hash; undefined when there is none or it was revoked. */
export async function tokenOf({ orm }: Db, secretHash: string): Promise<ApiToken | undefined> {
  return orm
    .select()
    .from(apiTokens)
    .where(and(eq(apiTokens.secretHash, secretHash), isNull(apiTokens.revokedAt)))
    .get();
}

/** The tokens that work. */
export async function listTokens({ orm }: Db): Promise<ApiToken[]> {
  return orm.select().from(apiTokens).where(isNull(apiTokens.revokedAt)).orderBy(asc(apiTokens.folded)).all();
}

export async function sawToken({ orm }: Db, id: number, now: string): Promise<void> {
  orm
    .update(apiTokens)
    .set({ lastUsedAt: momentOf({ now }) })
    .where(eq(apiTokens.id, id))
    .run();
}

/** A token, by its number or name, works no more. Throws NotFoundError. */
export async function revokeToken(db: Db, which: number | string, doing: Doing): Promise<void> {
  inTransaction(db, () => {
    const held = typeof which === "string" ? tokenNamed(db, which) : tokenNumbered(db, which);
    if (held === undefined) throw new NotFoundError(`No token that works has the name or number ${which}.`);
    db.orm
      .update(apiTokens)
      .set({ revokedAt: momentOf(doing) })
      .where(eq(apiTokens.id, held.id))
      .run();
    return { result: undefined, told: tell(held.name, "revoked", doing) };
  });
}

function tokenNamed({ orm }: Db, name: string): ApiToken | undefined {
  return orm
    .select()
    .from(apiTokens)
    .where(and(eq(apiTokens.folded, foldName(name)), isNull(apiTokens.revokedAt)))
    .get();
}

function tokenNumbered({ orm }: Db, id: number): ApiToken | undefined {
  return orm
    .select()
    .from(apiTokens)
    .where(and(eq(apiTokens.id, id), isNull(apiTokens.revokedAt)))
    .get();
}

function tell(name: string, what: string, doing: Doing): Told {
  return {
    act: "token changed",
    subjects: [{ kind: "token", name }],
    summary: `${name}: ${what}`,
    at: momentOf(doing),
    touches: nothingPast,
  };
}
