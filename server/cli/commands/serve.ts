import { acting } from "#db/history/acting.ts";
import { closeDatabase, type Db, IN_MEMORY, openDatabase } from "#db/open.ts";
import { type BackupOptions, type BackupPlan, planBackups } from "#server/backups/plan.ts";
import { keepBackingUp } from "#server/backups/schedule.ts";
import { type ListenOptions, readListening } from "#server/cli/listening.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { databaseFile } from "#server/cli/session.ts";
import { clockWarning } from "#server/clock-set-back.ts";
import { linkWords } from "#server/people/link-words.ts";
import { firstOwnerLink } from "#server/people/links.ts";
import { startServer } from "#server/serve.ts";

type SignIn = NonNullable<Parameters<typeof startServer>[1]["signIn"]>;

export async function serveCommand(
  options: CommonOptions & ListenOptions & BackupOptions,
): Promise<undefined> {
  const file = databaseFile(options);
  const plan = file === IN_MEMORY ? null : planBackups(file, options);
  await serveFile(file, options, "required", plan);
  return undefined;
}

/** Serves a database file until the process is told to stop; what is under way is finished first. */
export async function serveFile(
  file: string,
  options: ListenOptions,
  signIn: SignIn = "required",
  plan: BackupPlan | null = null,
): Promise<void> {
  const listening = readListening(options);
  const db = openDatabase(file);
  const now = (): Date => new Date();
  const say = (line: string): void => void process.stderr.write(`${line}\n`);
  const backups = plan === null ? null : keepBackingUp(db, plan, { now, say });
  const backupTrouble = () => backups?.trouble() ?? null;
  const server = await startServer(db, { ...listening, signIn, backupTrouble });
  process.stdout.write(`Ullage is at ${server.url} (database ${file}). Stop it with Ctrl-C.\n`);
  if (plan !== null) process.stdout.write(`${planWords(plan)}\n`);
  process.stdout.write(await signInWords(db, server.url, signIn));
  const late = clockWarning(db, now());
  if (late !== undefined) say(late);
  await new Promise<void>((resolve) => {
    process.once("SIGINT", resolve);
    process.once("SIGTERM", resolve);
  });
  await server.close();
  await backups?.stop();
  closeDatabase(db);
}

function planWords({ folder, everyMs, keep }: BackupPlan): string {
  const hours = everyMs / 3_600_000;
  const every = Number.isInteger(hours) ? `${hours} h` : `${everyMs / 60_000} min`;
  return `Backed up every ${every} into ${folder}; kept are the last ${keep.daily} days and ${keep.weekly} weeks.`;
}

/** How one gets in, where that is not known: by the link for the first owner, or, in the demo, by itself. */
async function signInWords(db: Db, url: string, signIn: SignIn): Promise<string> {
  if (signIn !== "required") {
    return `Signed in by itself as ${signIn.openAs.role}, on this machine only: it holds an invented bar.\n`;
  }
  const link = await firstOwnerLink(db, { now: new Date(), by: acting().who });
  return link === null ? "" : `Nobody owns this book yet. ${linkWords(link, url)}\n`;
}
