import type { Catalogue } from "#engine/catalogue.ts";
import { billOf } from "#engine/specs/bill.ts";
import type { BusinessDate } from "#engine/time.ts";

/** What one base unit of an item asks for, by number: other items, and shares of parts of fruit. */
type OpenedItem = { items: number[]; amounts: number[]; parts: number[]; shares: number[] };

/** What a unit of each item asks for in the end, between two changes of preps and cuts. */
export class OpenedItems {
  readonly #opened: (OpenedItem | undefined)[] = [];
  readonly #names: string[];
  readonly #numbers: ReadonlyMap<string, number>;
  readonly #catalogue: Catalogue;
  readonly #date: BusinessDate;
  /** The fruit of each part, and the number of each part of a fruit. */
  readonly #sources: number[] = [];
  readonly #parts = new Map<string, Map<string, number>>();

  constructor(catalogue: Catalogue, date: BusinessDate, numbers: ReadonlyMap<string, number>) {
    this.#catalogue = catalogue;
    this.#date = date;
    this.#numbers = numbers;
    this.#names = [...numbers.keys()];
  }

  /**
   * Adds to `use` what comes of the items taken on one day: the pieces of a fruit are the largest, over its parts, of the
   * shares asked of that part.
   */
  add(taken: Float64Array, use: Float64Array): void {
    const shares: (number | undefined)[] = [];
    for (let number = 0; number < taken.length; number += 1) {
      const amount = taken[number] as number;
      if (amount === 0) continue;
      const opened = this.#of(number);
      const { items, amounts, parts } = opened;
      for (let at = 0; at < items.length; at += 1) {
        const item = items[at] as number;
        use[item] = (use[item] as number) + amount * (amounts[at] as number);
      }
      for (let at = 0; at < parts.length; at += 1) {
        const part = parts[at] as number;
        shares[part] = (shares[part] ?? 0) + amount * (opened.shares[at] as number);
      }
    }
    const most = new Map<number, number>();
    for (const [part, asked] of shares.entries()) {
      const source = this.#sources[part];
      if (asked === undefined || source === undefined) continue;
      most.set(source, Math.max(asked, most.get(source) ?? Number.NEGATIVE_INFINITY));
    }
    for (const [source, pieces] of most) use[source] = (use[source] as number) + pieces;
  }

  #of(number: number): OpenedItem {
    const known = this.#opened[number];
    if (known !== undefined) return known;
    const portion = { item: this.#names[number] ?? "", amount: 1, variance: 0, biasSd: 0 };
    const bill = billOf(this.#catalogue, [portion], { date: this.#date });
    const opened: OpenedItem = { items: [], amounts: [], parts: [], shares: [] };
    for (const { item, amount } of bill.items) {
      opened.items.push(this.#numberOf(item));
      opened.amounts.push(amount);
    }
    for (const { source, parts, shares } of bill.cuts) {
      for (const part of parts) {
        opened.parts.push(this.#partOf(source, part));
        opened.shares.push(shares);
      }
    }
    this.#opened[number] = opened;
    return opened;
  }

  #numberOf(item: string): number {
    const number = this.#numbers.get(item);
    if (number === undefined) throw new Error(`A bill names "${item}", which the catalogue has not.`);
    return number;
  }

  #partOf(source: string, part: string): number {
    let ofSource = this.#parts.get(source);
    if (ofSource === undefined) {
      ofSource = new Map();
      this.#parts.set(source, ofSource);
    }
    const number = ofSource.get(part) ?? this.#sources.length;
    if (number === this.#sources.length) this.#sources.push(this.#numberOf(source));
    ofSource.set(part, number);
    return number;
  }
}
