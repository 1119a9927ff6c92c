/** Something was asked for that the database does not hold; the message names it and what is near. */
export class NotFoundError extends Error {
  override name = "NotFoundError";
}

/** What is asked cannot be done as things stand: a name taken, an entry already replaced. */
export class ConflictError extends Error {
  override name = "ConflictError";
}

/** Facts that cannot be taken as they are; the message says what to change. */
export class InvalidError extends Error {
  override name = "InvalidError";
}

/** A database file that this program cannot open. */
export class DatabaseFileError extends Error {
  override name = "DatabaseFileError";
}
