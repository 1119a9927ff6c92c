import { BookError } from "#db/book/problem.ts";
import { ConflictError, DatabaseFileError, InvalidError, NotFoundError } from "#db/errors.ts";
import { StorageError, storageFaultOf } from "#db/storage-fault.ts";
import { BatchCardError } from "#engine/prep/batch-card.ts";
import { ClockError } from "#engine/sales/read/clock.ts";
import { SalesFileError } from "#engine/sales/read/error.ts";
import { PrepCycleError } from "#engine/specs/bill.ts";
import { faultText } from "#server/fault-text.ts";
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
  const stored = storageFaultOf(error);
  if (stored !== undefined) return [stored.message];
  return systemProblem(error);
}

/**
 * The HTTP status of what a person can mend: 404 not there, 507 no room, 503 the machine does not do as asked, else 422: the
 * request itself is wrong.
 */
export function statusOf(error: unknown): 404 | 422 | 503 | 507 {
  if (error instanceof NotFoundError) return 404;
  if (error instanceof Error && "code" in error && NO_ROOM.has(String(error.code))) return 507;
  const stored = storageFaultOf(error);
  if (stored !== undefined) return stored instanceof StorageError && stored.trouble === "full" ? 507 : 503;
  return systemProblem(error) === undefined ? 422 : 503;
}

const NO_ROOM = new Set(["ENOSPC", "EDQUOT"]);

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
    case "EROFS":
      return [
        `${path}: it is on a disk that may only be read. Nothing was changed; name a place that can be written.`,
      ];
    case "EIO":
      return [`${path}: the disk did not read or write it. Nothing was changed; see that the disk is well.`];
    case "EMFILE":
    case "ENFILE":
      return [
        "Too many files are open on this machine. Nothing was changed; close some programs and try again.",
      ];
    case "EISDIR":
      return [`${path}: a file is wanted, and this is a folder.`];
    case "ENOTDIR":
      return [`${path}: a folder is wanted, and this is a file.`];
    case "ENOSPC":
    case "EDQUOT":
      return ["The disk is full. Nothing was changed; make room and try again."];
    case "EADDRINUSE":
      return ["That port is taken by another program. Choose one with --port, or --port 0 for any free one."];
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
  process.stderr.write(`${faultText(error)}\n`);
  return 2;
}
