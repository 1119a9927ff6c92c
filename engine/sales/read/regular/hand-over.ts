import type { ChildStyle } from "#engine/sales/read/child-marks.ts";
import type { Encoding } from "#engine/sales/read/decode.ts";

/** Thrown inside the reader of regular files when a file turns out not to be one: the general reader takes it then. */
export class HandOver extends Error {
  override name = "HandOver";
}

/** Thrown where rows belong to rows above them, or are marked as such in another way than the first rows said. */
export class RowsBelong extends HandOver {
  override name = "RowsBelong";
  /** How they are marked, where all of them were seen. */
  readonly style: ChildStyle | null;

  constructor(why: string, style: ChildStyle | null = null) {
    super(why);
    this.style = style;
  }
}

/** Thrown where more of the first rows must be seen. */
export class HeadTooShort extends HandOver {
  override name = "HeadTooShort";
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
