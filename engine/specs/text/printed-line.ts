import { UNITS } from "#engine/measure/units.ts";
import type { Reading } from "#engine/specs/text/entry.ts";

/** What can be printed: a line that was read without error. */
export type PrintableLine = Omit<Reading, "error">;

const NAME = '"(?:[^"]|"")+"';
const PRINTED = new RegExp(`^(?:top|(\\S+) (${UNITS.join("|")})) (${NAME}(?: or ${NAME})*)(?: # (.+))?$`);

/**
 * A line in its exact form, in which any name and note can be written: an amount, a unit, names in double quotes
 * (a quote within is doubled), and behind " # " the note.
 *
 * { 2, oz, "Gin, London dry", note "or vodka" } → 2 oz "Gin, London dry" # or vodka
 */
export function printExactly(line: PrintableLine): string {
  const names = [line.item ?? "", ...line.orItems].map((name) => `"${name.replaceAll('"', '""')}"`);
  return `${printMeasure(line)} ${names.join(" or ")}${line.note === null ? "" : ` # ${line.note}`}`;
}

/** Amount and unit as printed. Throws RangeError where a line has none, or no item. */
export function printMeasure(line: PrintableLine): string {
  const { unit, item } = line;
  if (item === null || unit === null)
    throw new RangeError("A spec line needs a unit and an item to be printed.");
  return unit === "top" ? "top" : `${figureOf(line)} ${unit}`;
}

/** The amount as printed. Throws RangeError where a line has none. */
export function figureOf({ amount, item }: PrintableLine): string {
  if (amount === null) throw new RangeError(`The spec line of "${item}" needs an amount to be printed.`);
  const figure = String(amount);
  // Three decimals behind a point could be read as thousands: "1.125" is printed "1.1250".
  return /^\d+\.\d{3}$/.test(figure) ? `${figure}0` : figure;
}

/** Reads what `printExactly` writes; undefined for any other text. */
export function readExactly(text: string): Reading | undefined {
  const found = PRINTED.exec(text);
  if (found === null) return undefined;
  const [, figure, unit, quoted = "", note = null] = found;
  const amount = figure === undefined ? null : Number(figure);
  if (amount !== null && !(amount > 0 && Number.isFinite(amount))) return undefined;
  const [item = "", ...orItems] = [...quoted.matchAll(/"((?:[^"]|"")+)"/g)].map((name) =>
    (name[1] ?? "").replaceAll('""', '"'),
  );
  return { amount, unit: UNITS.find((known) => known === unit) ?? "top", item, orItems, note, error: null };
}
