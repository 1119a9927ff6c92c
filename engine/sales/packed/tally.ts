import { ByteReader, ByteWriter, LONGEST_WHOLE } from "#engine/sales/packed/bytes.ts";
import { type DayColumns, NOTHING } from "#engine/sales/packed/day-columns.ts";

/**
 * What one day sold of each ring name with each modifier text, with or without a time of day, in columns: entry n of every
 * column belongs together.
 */
export type DayTally = {
  count: number;
  ringName: Int32Array;
  modifiers: Int32Array;
  /** 1 for lines with a time. */
  isTimed: Uint8Array;
  quantity: Float64Array;
  netMinor: Float64Array;
};

export const NO_TALLY: DayTally = tallyOfSize(0);

const SLOTS_AT_FIRST = 2048;

/**
 * The tally of a day's lines, in the order in which they first show a group: net money where a line has it, else gross, else
 * none.
 */
export function tallyOf(day: DayColumns): DayTally {
  // Sums of parts depend on their order in the last digit, so they are made in the one order of the lines.
  day.sort();
  const { count, at, ringName, modifiers, quantity, netMinor, grossMinor } = day;
  groups.clear();
  const places = new Int32Array(count);
  for (let row = 0; row < count; row += 1) {
    const isTimed = at[row] === NOTHING ? 0 : 1;
    places[row] = groups.placeOf(ringName[row] as number, 2 * (modifiers[row] as number) + isTimed);
  }
  const tally = groups.asTally();
  for (let row = 0; row < count; row += 1) {
    const place = places[row] as number;
    const net = netMinor[row] as number;
    const gross = grossMinor[row] as number;
    const money = net !== NOTHING ? net : gross !== NOTHING ? gross : 0;
    tally.quantity[place] = (tally.quantity[place] as number) + (quantity[row] as number);
    tally.netMinor[place] = (tally.netMinor[place] as number) + money;
  }
  return tally;
}

function tallyOfSize(count: number): DayTally {
  return {
    count,
    ringName: new Int32Array(count),
    modifiers: new Int32Array(count),
    isTimed: new Uint8Array(count),
    quantity: new Float64Array(count),
    netMinor: new Float64Array(count),
  };
}

/** Groups by two numbers, each with a place from 0 in the order met, without a key to build for every line. */
class TallyGroups {
  #slots = new Int32Array(SLOTS_AT_FIRST);
  #ones = new Int32Array(SLOTS_AT_FIRST);
  #others = new Int32Array(SLOTS_AT_FIRST);
  #count = 0;

  clear(): void {
    this.#slots.fill(0);
    this.#count = 0;
  }

  placeOf(one: number, other: number): number {
    const mask = this.#slots.length - 1;
    let slot = slotOf(one, other) & mask;
    for (;;) {
      const place = (this.#slots[slot] as number) - 1;
      if (place < 0) return this.#add(one, other, slot);
      if (this.#ones[place] === one && this.#others[place] === other) return place;
      slot = (slot + 1) & mask;
    }
  }

  /** The groups with nothing added up yet. */
  asTally(): DayTally {
    const tally = tallyOfSize(this.#count);
    for (let place = 0; place < this.#count; place += 1) {
      const other = this.#others[place] as number;
      tally.ringName[place] = this.#ones[place] as number;
      tally.modifiers[place] = other >> 1;
      tally.isTimed[place] = other & 1;
    }
    return tally;
  }

  #add(one: number, other: number, slot: number): number {
    const place = this.#count;
    this.#ones[place] = one;
    this.#others[place] = other;
    this.#count = place + 1;
    this.#slots[slot] = this.#count;
    if (this.#count * 2 > this.#slots.length) this.#grow();
    return place;
  }

  #grow(): void {
    const length = this.#slots.length * 4;
    const larger = (column: Int32Array) => {
      const copy = new Int32Array(length);
      copy.set(column);
      return copy;
    };
    this.#ones = larger(this.#ones);
    this.#others = larger(this.#others);
    this.#slots = new Int32Array(length);
    for (let place = 0; place < this.#count; place += 1) {
      let slot = slotOf(this.#ones[place] as number, this.#others[place] as number) & (length - 1);
      while (this.#slots[slot] !== 0) slot = (slot + 1) & (length - 1);
      this.#slots[slot] = place + 1;
    }
  }
}

function slotOf(one: number, other: number): number {
  const mixed = Math.imul(one, 0x9e3779b1) ^ Math.imul(other, 0x85ebca6b);
  return mixed ^ (mixed >>> 15);
}

const groups = new TallyGroups();
const writer = new ByteWriter();
const [SUMS_WHOLE, SUMS_REAL] = [1, 2];

/** A day's tally as bytes. */
export function packTally(tally: DayTally): Uint8Array {
  const { count, ringName, modifiers, isTimed, quantity, netMinor } = tally;
  writer.clear();
  writer.reserve(LONGEST_WHOLE);
  writer.whole(count);
  writer.wholeColumn(ringName, count);
  writer.wholeColumn(modifiers, count);
  for (let place = 0; place < count; place += 1) writer.byte(isTimed[place] as number);
  packSums(quantity, count);
  packSums(netMinor, count);
  return writer.written();
}

function packSums(column: Float64Array, count: number): void {
  if (writer.formedColumn(SUMS_WHOLE, column, count)) return;
  writer.byte(SUMS_REAL);
  for (let place = 0; place < count; place += 1) writer.real(column[place] as number);
}

/** The tally in such bytes. Throws for bytes that are none. */
export function unpackTally(bytes: Uint8Array): DayTally {
  const reader = new ByteReader(bytes);
  const tally = tallyOfSize(reader.whole());
  reader.wholeColumn(tally.ringName);
  reader.wholeColumn(tally.modifiers);
  reader.byteColumn(tally.isTimed);
  for (const column of [tally.quantity, tally.netMinor]) {
    if (reader.byte() === SUMS_WHOLE) reader.signedColumn(column);
    else for (let place = 0; place < tally.count; place += 1) column[place] = reader.real();
  }
  return tally;
}

/** The quantity of all groups together. */
export function quantityOf({ quantity }: DayTally): number {
  return quantity.reduce((sum, of) => sum + of, 0);
}
