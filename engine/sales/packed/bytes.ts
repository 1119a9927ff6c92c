const SMALL = 0x7fffffff;
const SMALL_SIGNED = 0x3fffffff;
/** Bytes of the longest whole number. */
export const LONGEST_WHOLE = 9;

/** Writes numbers and texts into bytes that grow: whole numbers seven bits a byte, low ones first (as in LEB128). */
export class ByteWriter {
  #bytes = new Uint8Array(1 << 16);
  #length = 0;

  clear(): void {
    this.#length = 0;
  }

  /** A copy of what was written. */
  written(): Uint8Array {
    return this.#bytes.slice(0, this.#length);
  }

  /** Room for so many more bytes, so that the writes that follow need not ask. */
  reserve(more: number): void {
    if (this.#length + more <= this.#bytes.length) return;
    const larger = new Uint8Array(Math.max(this.#bytes.length * 2, this.#length + more));
    larger.set(this.#bytes.subarray(0, this.#length));
    this.#bytes = larger;
  }

  byte(value: number): void {
    this.reserve(1);
    this.#bytes[this.#length] = value;
    this.#length += 1;
  }

  /** A whole number from 0 to 2^53. Needs LONGEST_WHOLE reserved bytes. */
  whole(value: number): void {
    let rest = value;
    const bytes = this.#bytes;
    let at = this.#length;
    while (rest > SMALL) {
      bytes[at] = (rest % 128) | 128;
      at += 1;
      rest = Math.floor(rest / 128);
    }
    while (rest > 127) {
      bytes[at] = (rest & 127) | 128;
      at += 1;
      rest >>>= 7;
    }
    bytes[at] = rest;
    this.#length = at + 1;
  }

  /** A whole number of either sign, small ones short: 0, −1, 1, −2 → 0, 1, 2, 3. */
  signed(value: number): void {
    this.whole(value < 0 ? -2 * value - 1 : 2 * value);
  }

  /**
   * The byte `form`, then the first `count` numbers of a column, each as `signed` would write it. False, and nothing written,
   * where one of them is not whole or not small.
   */
  formedColumn(form: number, column: Float64Array, count: number): boolean {
    this.reserve(LONGEST_WHOLE * (count + 1));
    const bytes = this.#bytes;
    bytes[this.#length] = form;
    let at = this.#length + 1;
    for (let row = 0; row < count; row += 1) {
      const value = column[row] as number;
      const small = value | 0;
      if (small !== value || small > SMALL_SIGNED || small < -SMALL_SIGNED) return false;
      let rest = (small << 1) ^ (small >> 31);
      while (rest > 127) {
        bytes[at] = (rest & 127) | 128;
        at += 1;
        rest >>>= 7;
      }
      bytes[at] = rest;
      at += 1;
    }
    this.#length = at;
    return true;
  }

  /** The first `count` numbers of a column of small whole numbers. */
  wholeColumn(column: Int32Array, count: number): void {
    this.reserve(LONGEST_WHOLE * count);
    const bytes = this.#bytes;
    let at = this.#length;
    for (let row = 0; row < count; row += 1) {
      let rest = column[row] as number;
      while (rest > 127) {
        bytes[at] = (rest & 127) | 128;
        at += 1;
        rest >>>= 7;
      }
      bytes[at] = rest;
      at += 1;
    }
    this.#length = at;
  }

  real(value: number): void {
    this.reserve(8);
    new DataView(this.#bytes.buffer).setFloat64(this.#length, value, true);
    this.#length += 8;
  }

  text(value: string): void {
    const bytes = new TextEncoder().encode(value);
    this.reserve(bytes.length + 8);
    this.whole(bytes.length);
    this.#bytes.set(bytes, this.#length);
    this.#length += bytes.length;
  }
}

/** Reads what ByteWriter wrote. */
export class ByteReader {
  readonly #bytes: Uint8Array;
  #at = 0;

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
  }

  byte(): number {
    const value = this.#bytes[this.#at];
    if (value === undefined) throw new Error("A packed block of sales ends too early.");
    this.#at += 1;
    return value;
  }

  whole(): number {
    let value = this.byte();
    if (value < 128) return value;
    value &= 127;
    for (let scale = 128; ; scale *= 128) {
      const next = this.byte();
      value += (next & 127) * scale;
      if (next < 128) return value;
    }
  }

  signed(): number {
    const value = this.whole();
    return value % 2 === 0 ? value / 2 : -(value + 1) / 2;
  }

  /** Fills a column with whole numbers. */
  wholeColumn(column: Int32Array): void {
    const bytes = this.#bytes;
    let at = this.#at;
    for (let row = 0; row < column.length; row += 1) {
      const value = bytes[at] as number;
      if (value < 128) {
        column[row] = value;
        at += 1;
        continue;
      }
      // Longer ones are rarer, and the end of the bytes is watched there.
      this.#at = at;
      column[row] = this.whole();
      at = this.#at;
    }
    this.#at = at;
    if (at > bytes.length) throw new Error("A packed block of sales ends too early.");
  }

  /** Fills a column with numbers of either sign. */
  signedColumn(column: Float64Array): void {
    const bytes = this.#bytes;
    let at = this.#at;
    for (let row = 0; row < column.length; row += 1) {
      const low = bytes[at] as number;
      const high = bytes[at + 1] as number;
      if (low < 128 || high < 128) {
        const value = low < 128 ? low : (low & 127) | (high << 7);
        at += low < 128 ? 1 : 2;
        column[row] = (value >>> 1) ^ -(value & 1);
        continue;
      }
      this.#at = at;
      column[row] = this.signed();
      at = this.#at;
    }
    this.#at = at;
    if (at > bytes.length) throw new Error("A packed block of sales ends too early.");
  }

  /** Fills a column with the next bytes. */
  byteColumn(column: Uint8Array): void {
    const bytes = this.#bytes.subarray(this.#at, this.#at + column.length);
    if (bytes.length < column.length) throw new Error("A packed block of sales ends too early.");
    column.set(bytes);
    this.#at += column.length;
  }

  real(): number {
    const { buffer, byteOffset } = this.#bytes;
    const value = new DataView(buffer, byteOffset).getFloat64(this.#at, true);
    this.#at += 8;
    return value;
  }

  text(): string {
    const length = this.whole();
    const bytes = this.#bytes.subarray(this.#at, this.#at + length);
    if (bytes.length < length) throw new Error("A packed block of sales ends too early.");
    this.#at += length;
    return new TextDecoder().decode(bytes);
  }

  get isAtEnd(): boolean {
    return this.#at === this.#bytes.length;
  }
}

/** Whether a number is whole and small enough to be written with its sign. 2.5 and 2^50 are not. */
export function isPlainWhole(value: number): boolean {
  return (value | 0) === value || (Number.isInteger(value) && Math.abs(value) < 2 ** 50);
}
