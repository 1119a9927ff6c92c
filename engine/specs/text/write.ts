import type { Reading } from "#engine/specs/text/entry.ts";
import { readSpecText } from "#engine/specs/text/read.ts";

/** What can be printed: a line that was read without error. */
export type PrintableLine = Omit<Reading, "error">;

/**
 * Spec text that reads back as the same lines: "0.75 oz lime juice, fresh".
 *
 * A name or note that plain text would read otherwise ("Gin, London dry") is put in quotes, or behind " # ".
 * Throws RangeError for a line without an item or, unless its unit is `top`, an amount.
 */
export function writeSpecText(lines: readonly PrintableLine[]): string {
  return lines.map(writeLine).join("\n");
}

function writeLine(line: PrintableLine): string {
  const plain = [line.item, ...line.orItems].join(" or ") + (line.note === null ? "" : `, ${line.note}`);
  const asPlain = `${measure(line)} ${plain}`;
  if (readsAs(asPlain, line)) return asPlain;
  const quoted = [line.item ?? "", ...line.orItems]
    .map((name) => `"${name.replaceAll('"', '""')}"`)
    .join(" or ");
  return `${measure(line)} ${quoted}${line.note === null ? "" : ` # ${line.note}`}`;
}

function measure({ amount, unit, item }: PrintableLine): string {
  if (item === null || unit === null)
    throw new RangeError("A spec line needs a unit and an item to be printed.");
  if (unit === "top") return "top";
  if (amount === null) throw new RangeError(`The spec line of "${item}" needs an amount to be printed.`);
  return `${figure(amount)} ${unit}`;
}

/** Three decimals behind a point could be read as thousands: "1.125" is printed "1.1250". */
function figure(amount: number): string {
  const text = String(amount);
  return /^\d+\.\d{3}$/.test(text) ? `${text}0` : text;
}

function readsAs(text: string, line: PrintableLine): boolean {
  const [read, ...more] = readSpecText(text);
  if (read === undefined || more.length > 0 || read.error !== null) return false;
  const isSameNames = read.item === line.item && read.orItems.join("\n") === line.orItems.join("\n");
  return isSameNames && read.amount === line.amount && read.unit === line.unit && read.note === line.note;
}
