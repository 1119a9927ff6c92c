import { BookError } from "#db/book/problem.ts";
import { ConflictError, DatabaseFileError, InvalidError, NotFoundError } from "#db/errors.ts";
import { BatchCardError } from "#engine/prep/batch-card.ts";
import { ClockError } from "#engine/sales/read/clock.ts";
import { SalesFileError } from "#engine/sales/read/error.ts";
import { PrepCycleError } from "#engine/specs/bill.ts";
import { InputError } from "#server/input-error.ts";

const MENDABLE = [
  ClockError,
  BatchCardError,
  ConflictError,
  DatabaseFileError,
  InvalidError,
  NotFoundError,
  PrepCycleError,
  SalesFileError,
];

/** What a person can mend, as the lines to show; undefined for a fault of the program. */
export function problemsOf(error: unknown): readonly string[] | undefined {
  if (error instanceof InputError || error instanceof BookError) return error.problems;
  if (MENDABLE.some((kind) => error instanceof kind)) return [(error as Error).message];
  return systemProblem(error);
}

/** Faults of the machine that a person can mend, in plain words. */
function systemProblem(error: unknown): readonly string[] | undefined {
  if (!(error instanceof Error) || !("code" in error)) return undefined;
  const path = "path" in error && typeof error.path === "string" ? error.path : "the file";
  switch (error.code) {
    case "ENOENT":
      return [`${path}: there is no such file or folder.`];
    case "EACCES":
    case "EPERM":
      return [`${path}: this account may not read or write it.`];
    case "EISDIR":
      return [`${path}: a file is wanted, and this is a folder.`];
    case "ENOTDIR":
      return [`${path}: a folder is wanted, and this is a file.`];
    case "ENOSPC":
      return ["The disk is full. Nothing was changed; make room and try again."];
    case "EADDRINUSE":
      return ["That port is taken by another program. Choose one with --port, or --port 0 for any free one."];
    case "SQLITE_NOTADB":
    case "SQLITE_CORRUPT":
      return [
        "The database file is damaged or is no database. Bring back a backup with: ullage restore FILE.",
      ];
    case "SQLITE_BUSY":
      return ["The database is in use by another program that did not let go. Try again in a moment."];
    case "SQLITE_CANTOPEN":
      return ["The database file cannot be opened; see that its folder exists and may be written to."];
    case "SQLITE_READONLY":
      return ["The database file may only be read. Nothing was changed."];
    default:
      return undefined;
  }
}

/** Says what is wrong on standard error and gives the exit status. */
export function reportFault(error: unknown): number {
  const problems = problemsOf(error);
  if (problems !== undefined) {
    process.stderr.write(`${problems.join("\n")}\n`);
    return 2;
  }
  process.stderr.write(`Something went wrong in the program itself; nothing half-written was kept.\n`);
  process.stderr.write(`${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
  return 2;
}
