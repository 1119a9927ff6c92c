import { closePast, currentClosing, reopenPast } from "#db/closings-repository.ts";
import { closeDatabase, type Db } from "#db/open.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { openExisting } from "#server/cli/session.ts";
import { InputError } from "#server/input-error.ts";
import { readDate } from "#server/reading.ts";
import { offerFor } from "#server/reports/closing.ts";
import { openWorld } from "#server/world.ts";

export async function closeCommand(options: CommonOptions & { to?: string }): Promise<undefined> {
  return withDb(options, async (db) => {
    if (options.to === undefined) throw new InputError(await whichDay(db));
    const { through, counts } = await closePast(db, readDate(options.to, "--to"), now());
    const held = counts.length === 0 ? "" : `, and with it the count ${counts.join(" and ")}`;
    process.stdout.write(
      `Closed up to ${through}${held}. To change something there: ullage reopen --reason "…"\n`,
    );
  });
}

/** Which day to close is for a person to say; the counts suggest one. */
async function whichDay(db: Db): Promise<string> {
  const closed = await currentClosing(db);
  const next = await offerFor(await openWorld(db));
  const isClosed = closed === undefined ? "Nothing is closed yet." : `Closed up to ${closed.through}.`;
  if (next === null) return `--to: name the last day to close. ${isClosed}`;
  const open =
    next.unsettled === 0
      ? ""
      : ` ${next.unsettled} likely ${next.unsettled === 1 ? "cause is" : "causes are"} still to be checked: ullage variance.`;
  return `--to: name the last day to close. ${isClosed} The count ${next.closing} suggests: ullage close --to ${next.through}.${open}`;
}

export async function reopenCommand(
  options: CommonOptions & { to?: string; reason?: string },
): Promise<undefined> {
  return withDb(options, async (db) => {
    const { reason = "", to } = options;
    if (reason.trim() === "")
      throw new InputError('--reason: say why the week is reopened: ullage reopen --reason "…"');
    const day = to === undefined ? undefined : readDate(to, "--to");
    const left = await reopenPast(db, { reason, to: day }, now());
    process.stdout.write(
      left === undefined
        ? "Reopened; nothing is closed now.\n"
        : `Reopened; closed up to ${left.through} now.\n`,
    );
  });
}

const now = () => ({ now: new Date().toISOString() });

async function withDb(options: CommonOptions, work: (db: Db) => Promise<void>): Promise<undefined> {
  const db = openExisting(options);
  try {
    await work(db);
  } finally {
    closeDatabase(db);
  }
  return undefined;
}
