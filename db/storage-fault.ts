import { DamagedFileError, DatabaseFileError } from "#db/errors.ts";

export type StorageTrouble = "full" | "busy" | "read-only" | "damaged" | "moved" | "unreadable";

/** The disk or the file system does not do what was asked; what was acknowledged before is kept, the act at hand is not. */
export class StorageError extends DatabaseFileError {
  override name = "StorageError";
  readonly trouble: StorageTrouble;
  constructor(trouble: StorageTrouble, message: string, options?: ErrorOptions) {
    super(message, options);
    this.trouble = trouble;
  }
}

const IS_SQLITE = /^SQLITE_/;

/**
 * What a failed write or read of the database comes to for whoever runs it: what, where, what to do; undefined for an error
 * that is no fault of disk or file. The code may lie deeper: the query builder wraps what SQLite says.
 */
export function storageFaultOf(
  error: unknown,
  file = "the database file",
): StorageError | DamagedFileError | undefined {
  if (error instanceof StorageError || error instanceof DamagedFileError) return error;
  for (let deeper: unknown = error; deeper instanceof Error; deeper = deeper.cause) {
    const code = "code" in deeper ? String(deeper.code) : "";
    if (!IS_SQLITE.test(code)) continue;
    const trouble = troubleOf(code);
    if (trouble === undefined) return undefined;
    const words = wordsOf(trouble, file, deeper.message);
    return trouble === "damaged"
      ? new DamagedFileError(words, { cause: error })
      : new StorageError(trouble, words, { cause: error });
  }
  return undefined;
}

/** After sqlite.org/rescode.html. */
function troubleOf(code: string): StorageTrouble | undefined {
  // With no room left, the shared memory beside the log cannot grow either.
  if (code === "SQLITE_FULL" || code === "SQLITE_IOERR_SHMSIZE") return "full";
  if (/^SQLITE_(?:CORRUPT|NOTADB)/.test(code)) return "damaged";
  if (/^SQLITE_(?:BUSY|LOCKED)/.test(code)) return "busy";
  if (code === "SQLITE_READONLY_DBMOVED") return "moved";
  if (/^SQLITE_(?:READONLY|PERM|AUTH)/.test(code)) return "read-only";
  if (/^SQLITE_(?:IOERR|CANTOPEN|NOLFS|PROTOCOL)/.test(code)) return "unreadable";
  return undefined;
}

function wordsOf(trouble: StorageTrouble, file: string, detail: string): string {
  switch (trouble) {
    case "full":
      return `There is no room left on the disk with ${file}. Nothing of this was kept, all before it is. Make room, then do it again.`;
    case "busy":
      return `${file} is in use by another program that does not let go. Nothing of this was kept; try again in a moment, or close that program.`;
    case "read-only":
      return `${file}, or its folder, may only be read by this account. Nothing of this was kept; allow writing to both, then do it again.`;
    case "moved":
      return `${file} was moved or deleted while it was open. Nothing of this was kept; put it back, or bring back a backup, and start again.`;
    case "damaged":
      return `${file} is damaged or is no database (${detail}). Stop the program and bring back a backup with: ullage restore FILE.`;
    case "unreadable":
      return `${file} cannot be read or written (${detail}). Nothing of this was kept; see that the disk is well and the folder there, then do it again.`;
  }
}
