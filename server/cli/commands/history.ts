import { acting } from "#db/history/acting.ts";
import { undoAct } from "#db/history-repository.ts";
import { closeDatabase, type Db } from "#db/open.ts";
import { printReport, type Report, section } from "#server/cli/output.ts";
import { type CommonOptions, formatOf } from "#server/cli/program.ts";
import { openExisting } from "#server/cli/session.ts";
import { InputError } from "#server/input-error.ts";
import { readDate } from "#server/reading.ts";
import { historyFor } from "#server/reports/history.ts";

type HistoryOptions = CommonOptions & {
  subject?: string;
  from?: string;
  to?: string;
  undo?: string;
  reason?: string;
};

const MOST = 100_000;
const SHOWN = 50;

export async function historyCommand(options: HistoryOptions): Promise<undefined> {
  const db = openExisting(options);
  try {
    if (options.undo !== undefined) await undo(db, options.undo, options.reason);
    else await list(db, options);
  } finally {
    closeDatabase(db);
  }
  return undefined;
}

async function list(db: Db, options: HistoryOptions): Promise<void> {
  const { subject, from, to } = options;
  const format = formatOf(options);
  const wanted = {
    subject,
    from: from === undefined ? undefined : readDate(from, "--from"),
    to: to === undefined ? undefined : readDate(to, "--to"),
    // A program wants all there is; a person begins with the latest.
    limit: format === "table" ? SHOWN : MOST,
  };
  printReport(historyView(await historyFor(db, wanted)), format);
}

function historyView({ acts, more }: Awaited<ReturnType<typeof historyFor>>): Report {
  return {
    json: { acts, more },
    sections: [
      section({
        columns: [
          { head: "no.", cell: (row) => row.seq, digits: 0 },
          { head: "when", cell: (row) => row.atLocal },
          { head: "who", cell: (row) => row.who },
          { head: "from", cell: (row) => `${row.via}, ${row.from}` },
          { head: "act", cell: (row) => row.act },
          { head: "what", cell: (row) => row.summary },
          { head: "why", cell: (row) => row.reason },
        ],
        rows: acts,
        empty: "Nothing of that was done.",
        notes: more ? ["Older acts are left out; narrow it with --subject, --from and --to."] : [],
      }),
    ],
  };
}

async function undo(db: Db, given: string, reason: string | undefined): Promise<void> {
  const seq = Number(given);
  if (!Number.isInteger(seq) || seq < 1)
    throw new InputError(`--undo: "${given}" is no number of an act; ullage history prints them.`);
  const doing = {
    now: new Date().toISOString(),
    by: acting().who,
    ...(reason === undefined ? {} : { reason }),
  };
  const done = await undoAct(db, seq, doing);
  process.stdout.write(`${done.summary} (no. ${done.seq}).\n`);
}
