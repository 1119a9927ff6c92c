import { ByteReader, ByteWriter, LONGEST_WHOLE } from "#engine/sales/packed/bytes.ts";
import { type DayColumns, NOTHING } from "#engine/sales/packed/day-columns.ts";
import { PairPlaces } from "#engine/sales/packed/pairs.ts";

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
  const tally = asTally(groups);
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

/** The groups with nothing added up yet. */
function asTally(groups: PairPlaces): DayTally {
  const tally = tallyOfSize(groups.count);
  for (let place = 0; place < groups.count; place += 1) {
    const other = groups.otherAt(place);
    tally.ringName[place] = groups.oneAt(place);
    tally.modifiers[place] = other >> 1;
    tally.isTimed[place] = other & 1;
  }
  return tally;
}

/** Its columns lie in one piece of memory: a year has thousands, and each piece has to be asked for. */
function tallyOfSize(count: number): DayTally {
  const memory = new ArrayBuffer(25 * count);
  return {
    count,
    ringName: new Int32Array(memory, 16 * count, count),
    modifiers: new Int32Array(memory, 20 * count, count),
    isTimed: new Uint8Array(memory, 24 * count, count),
    quantity: new Float64Array(memory, 0, count),
    netMinor: new Float64Array(memory, 8 * count, count),
  };
}

const groups = new PairPlaces();
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
