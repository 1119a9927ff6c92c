import { HandOver } from "#engine/sales/read/regular/hand-over.ts";

const [QUOTE, LF, CR] = [34, 10, 13];
const CELLS_MOST = 1024;

/** Where the cells of one row stand in the bytes, without their quotation marks. */
export class RowCells {
  readonly starts = new Int32Array(CELLS_MOST);
  readonly ends = new Int32Array(CELLS_MOST);
  /** 1 for a cell that writes quotation marks inside as two. */
  readonly doubled = new Uint8Array(CELLS_MOST);
  count = 0;
  readonly #delimiter: number;

  constructor(delimiter: string) {
    this.#delimiter = delimiter.charCodeAt(0);
  }

  /**
   * Finds the cells of the row that starts at `from` and gives where the next row starts; −1 if the row does not end before
   * `length`. bytes[length] must be a line feed. Throws HandOver for quotation marks that stand where none should.
   */
  find(bytes: Uint8Array, from: number, length: number): number {
    const delimiter = this.#delimiter;
    const largest = Math.max(delimiter, CR);
    const { starts, ends, doubled } = this;
    let cell = 0;
    let at = from;
    for (;;) {
      let byte = bytes[at] as number;
      if (cell === CELLS_MOST) throw new HandOver("A row has too many cells.");
      if (byte === QUOTE) {
        at = this.#quoted(bytes, at + 1, length, cell);
        if (at < 0) return -1;
        byte = bytes[at] as number;
        if (byte !== delimiter && byte !== LF && byte !== CR)
          throw new HandOver("Something stands behind a closing quotation mark.");
      } else {
        starts[cell] = at;
        // Most letters and digits come after the delimiter, so that one comparison lets them pass.
        while (byte > largest || (byte !== delimiter && byte !== LF && byte !== CR)) {
          at += 1;
          byte = bytes[at] as number;
        }
        ends[cell] = at;
        doubled[cell] = 0;
      }
      cell += 1;
      if (byte === delimiter && at < length) {
        at += 1;
        continue;
      }
      if (at >= length) return -1;
      this.count = cell;
      if (byte !== CR) return at + 1;
      // Whether a line feed follows is only known when it is there to be seen.
      if (at + 1 >= length) return -1;
      return bytes[at + 1] === LF ? at + 2 : at + 1;
    }
  }

  /** Goes to the end of a quoted cell and gives where the byte behind its closing mark stands; −1 when it is not there yet. */
  #quoted(bytes: Uint8Array, from: number, length: number, cell: number): number {
    let at = from;
    let hasDoubled = 0;
    for (;;) {
      while (at < length && bytes[at] !== QUOTE) at += 1;
      if (at >= length) return -1;
      if (at + 1 >= length) return -1;
      if (bytes[at + 1] !== QUOTE) break;
      hasDoubled = 1;
      at += 2;
    }
    this.starts[cell] = from;
    this.ends[cell] = at;
    this.doubled[cell] = hasDoubled;
    return at + 1;
  }
}
