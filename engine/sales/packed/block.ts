import { ByteReader, ByteWriter, isPlainWhole, LONGEST_WHOLE } from "#engine/sales/packed/bytes.ts";
import { DayColumns, NOTHING } from "#engine/sales/packed/day-columns.ts";

/** How a packed block is laid out; a change of layout gets a new number. */
const LAYOUT = 1;
const [NONE, WHOLE, WHOLE_OR_NOTHING, REAL] = [0, 1, 2, 3];
const [CODES_NONE, CODES_NUMBERS, CODES_TEXTS] = [0, 1, 2];

const writer = new ByteWriter();

/**
 * A day's lines as bytes: sorted, column by column, times and checks as steps from the line before.
 *
 * Equal lines in any order give equal bytes, and different ones different bytes.
 */
export function packBlock(day: DayColumns): Uint8Array {
  day.sort();
  const { count } = day;
  writer.clear();
  writer.reserve(8 * LONGEST_WHOLE * (count + 2));
  writer.whole(LAYOUT);
  writer.whole(count);
  packTimes(day.at, count);
  packCodes(day, day.check);
  packCodes(day, day.lineNo);
  writer.wholeColumn(day.ringName, count);
  writer.wholeColumn(day.modifiers, count);
  packNumbers(day.quantity, count);
  packNumbers(day.grossMinor, count);
  packNumbers(day.netMinor, count);
  return writer.written();
}

/** The lines of a packed block. Throws for bytes that are none. */
export function unpackBlock(bytes: Uint8Array): DayColumns {
  const reader = new ByteReader(bytes);
  const layout = reader.whole();
  if (layout !== LAYOUT)
    throw new Error(`A block of sales has the layout ${layout}, which this program does not know.`);
  const count = reader.whole();
  const day = new DayColumns();
  const at = unpackTimes(reader, count);
  const check = unpackCodes(reader, count, day);
  const lineNo = unpackCodes(reader, count, day);
  const ringName = new Int32Array(count);
  reader.wholeColumn(ringName);
  const modifiers = new Int32Array(count);
  reader.wholeColumn(modifiers);
  const quantity = unpackNumbers(reader, count);
  const grossMinor = unpackNumbers(reader, count);
  const netMinor = unpackNumbers(reader, count);
  if (!reader.isAtEnd) throw new Error("A packed block of sales is longer than its lines.");
  for (let row = 0; row < count; row += 1) {
    day.add(
      at[row] as number,
      check[row] as number,
      lineNo[row] as number,
      ringName[row] as number,
      modifiers[row] as number,
      quantity[row] as number,
      grossMinor[row] as number,
      netMinor[row] as number,
    );
  }
  return day;
}

/** How many lines a block has, without unpacking it. */
export function linesInBlock(bytes: Uint8Array): number {
  const reader = new ByteReader(bytes);
  reader.whole();
  return reader.whole();
}

/** Lines without a time stand first, so that their number says which they are. */
function packTimes(at: Float64Array, count: number): void {
  let untimed = 0;
  while (untimed < count && at[untimed] === NOTHING) untimed += 1;
  writer.whole(untimed);
  let last = 0;
  for (let row = untimed; row < count; row += 1) {
    const second = at[row] as number;
    if (row === untimed) writer.signed(second);
    else writer.whole(second - last);
    last = second;
  }
}

function unpackTimes(reader: ByteReader, count: number): Float64Array {
  const untimed = reader.whole();
  const at = new Float64Array(count).fill(NOTHING, 0, untimed);
  let last = 0;
  for (let row = untimed; row < count; row += 1) {
    last = row === untimed ? reader.signed() : last + reader.whole();
    at[row] = last;
  }
  return at;
}

function packCodes(day: DayColumns, column: Float64Array): void {
  let [numbers, nothings] = [0, 0];
  for (let row = 0; row < day.count; row += 1) {
    const code = column[row] as number;
    if (code >= 0) numbers += 1;
    else if (code === NOTHING) nothings += 1;
  }
  if (nothings === day.count) writer.byte(CODES_NONE);
  else if (numbers === day.count) packCodeNumbers(column, day.count);
  else packCodeTexts(day, column);
}

function packCodeNumbers(column: Float64Array, count: number): void {
  writer.byte(CODES_NUMBERS);
  let last = 0;
  for (let row = 0; row < count; row += 1) {
    const code = column[row] as number;
    writer.signed(code - last);
    last = code;
  }
}

/** Texts in the order in which they are met, each once, then for every line 0 or the text's place from 1. */
function packCodeTexts(day: DayColumns, column: Float64Array): void {
  writer.byte(CODES_TEXTS);
  const places = new Map<number, number>();
  for (let row = 0; row < day.count; row += 1) {
    const code = column[row] as number;
    if (code !== NOTHING && !places.has(code)) places.set(code, places.size + 1);
  }
  writer.whole(places.size);
  for (const code of places.keys()) writer.text(day.codeText(code) ?? "");
  writer.reserve(LONGEST_WHOLE * (7 * day.count + 16));
  for (let row = 0; row < day.count; row += 1) writer.whole(places.get(column[row] as number) ?? 0);
}

function unpackCodes(reader: ByteReader, count: number, day: DayColumns): Float64Array {
  const column = new Float64Array(count).fill(NOTHING);
  const form = reader.byte();
  if (form === CODES_NUMBERS) {
    let last = 0;
    for (let row = 0; row < count; row += 1) {
      last += reader.signed();
      column[row] = last;
    }
  } else if (form === CODES_TEXTS) {
    const codes = Array.from({ length: reader.whole() }, () => day.codeOf(reader.text()));
    for (let row = 0; row < count; row += 1) column[row] = codes[reader.whole() - 1] ?? NOTHING;
  } else if (form !== CODES_NONE) throw new Error(`A packed block of sales has codes of the form ${form}.`);
  return column;
}

function packNumbers(column: Float64Array, count: number): void {
  if (writer.formedColumn(WHOLE, column, count)) return;
  let nothings = 0;
  let parts = 0;
  for (let row = 0; row < count; row += 1) {
    const value = column[row] as number;
    if (value === NOTHING) nothings += 1;
    else if (!isPlainWhole(value)) parts += 1;
  }
  if (nothings === count) writer.byte(NONE);
  else if (parts > 0) {
    writer.byte(REAL);
    for (let row = 0; row < count; row += 1) writer.real(column[row] as number);
  } else if (nothings === 0) {
    writer.byte(WHOLE);
    for (let row = 0; row < count; row += 1) writer.signed(column[row] as number);
  } else {
    writer.byte(WHOLE_OR_NOTHING);
    for (let row = 0; row < count; row += 1) {
      const value = column[row] as number;
      if (value === NOTHING) writer.whole(0);
      else writer.whole(1 + (value < 0 ? -2 * value - 1 : 2 * value));
    }
  }
}

function unpackNumbers(reader: ByteReader, count: number): Float64Array {
  const form = reader.byte();
  if (form === WHOLE) {
    const column = new Float64Array(count);
    reader.signedColumn(column);
    return column;
  }
  const read = NUMBER_FORMS[form];
  if (read === undefined) throw new Error(`A packed block of sales has numbers of the form ${form}.`);
  return Float64Array.from({ length: count }, () => read(reader));
}

const NUMBER_FORMS: Record<number, (reader: ByteReader) => number> = {
  [NONE]: () => NOTHING,
  [WHOLE_OR_NOTHING]: (reader) => {
    const value = reader.whole();
    if (value === 0) return NOTHING;
    return value % 2 === 1 ? (value - 1) / 2 : -value / 2;
  },
  [REAL]: (reader) => reader.real(),
};
