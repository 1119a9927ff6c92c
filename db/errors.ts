/** Something was asked for that the database does not hold; the message names it and what is near. */
export class NotFoundError extends Error {
  override name = "NotFoundError";
}

/** What is asked cannot be done as things stand: a name taken, an entry already replaced. */
export class ConflictError extends Error {
  override name = "ConflictError";
}

/** What is asked would change the closed past. */
export class ClosedPastError extends ConflictError {
  override name = "ClosedPastError";
}

/** Facts that cannot be taken as they are; the message says what to change. */
export class InvalidError extends Error {
  override name = "InvalidError";
}

/** A database file that this program cannot open. */
export class DatabaseFileError extends Error {
  override name = "DatabaseFileError";
}

/** A database file whose bytes are not those of a database (any more). */
export class DamagedFileError extends DatabaseFileError {}

const DAMAGE = /^SQLITE_(?:CORRUPT|NOTADB)/;

/** Whether an error says that the database file itself is damaged, whenever that came to light. */
export function isDamage(error: unknown): boolean {
  if (error instanceof DamagedFileError) return true;
  return error instanceof Error && "code" in error && DAMAGE.test(String(error.code));
}
