import type { Encoding } from "#engine/sales/read/decode.ts";

/** Thrown inside the reader of regular files when a file turns out not to be one: the general reader takes it then. */
export class HandOver extends Error {
  override name = "HandOver";
}

/** Thrown where the bytes are no UTF-8: turned into it, the file may be regular all the same. */
export class OtherEncoding extends HandOver {
  override name = "OtherEncoding";
  /** As the bytes read so far say. */
  readonly encoding: Encoding;

  constructor(encoding: Encoding) {
    super(`The file is not in UTF-8 (${encoding}).`);
    this.encoding = encoding;
  }
}
