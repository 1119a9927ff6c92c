/** A sales file that cannot be read at all; the message says which file, what is wrong and what to do. */
export class SalesFileError extends Error {
  override name = "SalesFileError";
  constructor(fileName: string, what: string) {
    super(`${fileName}: ${what}`);
  }
}
