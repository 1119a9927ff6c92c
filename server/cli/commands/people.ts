import { acting } from "#db/history/acting.ts";
import { closeDatabase, type Db, openDatabase } from "#db/open.ts";
import {
  addPerson,
  changePerson,
  listPeople,
  personNamed,
  type StoredPerson,
} from "#db/people-repository.ts";
import { ROLES, type Role } from "#db/schema/people.ts";
import { addToken, listTokens, revokeToken } from "#db/tokens-repository.ts";
import { printReport, type Report, section } from "#server/cli/output.ts";
import { type CommonOptions, formatOf } from "#server/cli/program.ts";
import { databaseFile } from "#server/cli/session.ts";
import { InputError } from "#server/input-error.ts";
import { linkWords } from "#server/people/link-words.ts";
import { makeLink } from "#server/people/links.ts";
import { secretHash } from "#server/people/secrets.ts";
import { newToken } from "#server/people/tokens.ts";

type PeopleOptions = CommonOptions & { role?: string };
type TokenOptions = PeopleOptions & { scope?: string };

/** Who may sign in: listed, added, given a new link, shut out and let in again. Whoever holds the machine holds the keys. */
export async function peopleCommand(
  options: PeopleOptions,
  what = "list",
  name?: string,
): Promise<undefined> {
  await withDatabase(options, async (db) => {
    const doing = { now: new Date().toISOString(), by: acting().who };
    if (what === "list") return printReport(peopleView(await listPeople(db)), formatOf(options));
    if (what === "add") {
      const id = await addPerson(db, { name: given(name, what), role: readRole(options.role) }, doing);
      return say(linkWords(await linkFor(db, id)));
    }
    const { id, name: known } = await somebody(db, given(name, what));
    if (what === "link") return say(linkWords(await linkFor(db, id)));
    if (what === "disable" || what === "enable") {
      await changePerson(db, id, { isActive: what === "enable" }, doing);
      return say(
        what === "enable" ? `${known} may sign in again.` : `${known} is signed out and may not sign in.`,
      );
    }
    throw new InputError(`"${what}" is nothing to do with people; write list, add, link, disable or enable.`);
  });
  return undefined;
}

/** Tokens for scripts: listed, made (shown once) and revoked. */
export async function tokenCommand(options: TokenOptions, what = "list", name?: string): Promise<undefined> {
  await withDatabase(options, async (db) => {
    const doing = { now: new Date().toISOString(), by: acting().who };
    if (what === "list") return printReport(await tokensView(db), formatOf(options));
    if (what === "add") {
      const secret = newToken();
      const [role, scope] = [readRole(options.role), readScope(options.scope)];
      await addToken(db, { name: given(name, what), role, scope, secretHash: secretHash(secret) }, doing);
      return say(`${secret}\nIt is shown this once. Send it as the header: Authorization: Bearer TOKEN`);
    }
    if (what === "revoke") {
      await revokeToken(db, given(name, what), doing);
      return say(`${name} works no more.`);
    }
    throw new InputError(`"${what}" is nothing to do with tokens; write list, add or revoke.`);
  });
  return undefined;
}

function linkFor(db: Db, id: number) {
  return makeLink(db, id, { now: new Date(), by: acting().who });
}

async function somebody(db: Db, name: string): Promise<StoredPerson> {
  const found = await personNamed(db, name);
  if (found !== undefined) return found;
  throw new InputError(`Nobody is named "${name}". See who there is with: ullage people`);
}

function given(name: string | undefined, what: string): string {
  if (name !== undefined && name.trim() !== "") return name.trim();
  throw new InputError(`Say whom or what: ullage … ${what} NAME.`);
}

function readRole(text: string | undefined): Role {
  const role = ROLES.find((known) => known === text);
  if (role === undefined) throw new InputError(`--role: write one of ${ROLES.join(", ")}.`);
  return role;
}

function readScope(text = "read"): "read" | "write" {
  if (text === "read" || text === "write") return text;
  throw new InputError(`--scope: "${text}" is neither read nor write.`);
}

function peopleView(people: readonly StoredPerson[]): Report {
  const rows = people.map(({ name, role, isActive, passwordHash, pinHash }) => ({
    name,
    role,
    signsInWith: passwordHash !== null ? "password" : pinHash !== null ? "PIN" : null,
    isActive,
  }));
  return {
    json: rows,
    sections: [
      section({
        columns: [
          { head: "Name", cell: (row) => row.name },
          { head: "Role", cell: (row) => row.role },
          { head: "Signs in with", cell: (row) => row.signsInWith ?? "link not used yet" },
          { head: "May sign in", cell: (row) => (row.isActive ? "yes" : "no") },
        ],
        rows,
        empty: "Nobody yet. Start the server: it prints the link that names the first owner.",
      }),
    ],
  };
}

async function tokensView(db: Db): Promise<Report> {
  const rows = (await listTokens(db)).map(({ name, role, scope, madeBy, madeAt, lastUsedAt }) => ({
    name,
    role,
    scope,
    madeBy,
    madeAt,
    lastUsedAt,
  }));
  return {
    json: rows,
    sections: [
      section({
        columns: [
          { head: "Token", cell: (row) => row.name },
          { head: "Role", cell: (row) => row.role },
          { head: "May", cell: (row) => row.scope },
          { head: "Made by", cell: (row) => row.madeBy },
          { head: "Made", cell: (row) => row.madeAt },
          { head: "Last used", cell: (row) => row.lastUsedAt },
        ],
        rows,
        empty: 'No token works. Make one with: ullage token add "price script" --role manager --scope read',
      }),
    ],
  };
}

async function withDatabase(options: CommonOptions, act: (db: Db) => Promise<void>): Promise<void> {
  // The bar's people may be named before its book is loaded, so the file need not be there.
  const db = openDatabase(databaseFile(options));
  try {
    await act(db);
  } finally {
    closeDatabase(db);
  }
}

function say(text: string): void {
  process.stdout.write(`${text}\n`);
}
