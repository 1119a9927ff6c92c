import { ByteDictionary } from "#engine/sales/read/regular/byte-dictionary.ts";

const decoder = new TextDecoder("utf-8", { ignoreBOM: true });

/** The texts of one column, each understood once, however often it stands there: a number for each, as `read` gives it. */
export class TextCells {
  readonly #dictionary = new ByteDictionary();
  readonly #values: number[] = [];
  readonly #read: (cell: string) => number;

  constructor(read: (cell: string) => number) {
    this.#read = read;
  }

  get size(): number {
    return this.#dictionary.size;
  }

  /** What `read` gives for the cell. A cell with doubled quotes is looked for with the quotes around it. */
  valueOf(bytes: Uint8Array, start: number, end: number, hasDoubledQuotes: boolean): number {
    const from = hasDoubledQuotes ? start - 1 : start;
    const to = hasDoubledQuotes ? end + 1 : end;
    const size = this.#dictionary.size;
    const place = this.#dictionary.placeOf(bytes, from, to);
    if (place === size) this.#values.push(this.#read(cellText(bytes, start, end, hasDoubledQuotes)));
    return this.#values[place] as number;
  }
}

/** The text of a cell whose bytes are known, as the general reader has it: line ends as LF, doubled quotes single. */
export function cellText(bytes: Uint8Array, start: number, end: number, hasDoubledQuotes: boolean): string {
  const text = decoder.decode(bytes.subarray(start, end));
  const lined = text.includes("\r") ? text.replace(/\r\n?/g, "\n") : text;
  return hasDoubledQuotes ? lined.replaceAll('""', '"') : lined;
}
