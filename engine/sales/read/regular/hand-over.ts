/** Thrown inside the reader of regular files when a file turns out not to be one: the general reader takes it then. */
export class HandOver extends Error {
  override name = "HandOver";
}
