import { germanLines } from "#engine/specs/text/german/write.ts";
import { type PrintableLine, printExactly, printMeasure } from "#engine/specs/text/printed-line.ts";
import { readSpecText } from "#engine/specs/text/read.ts";

/**
 * Spec text that reads back as the same lines: "0.75 oz lime juice, fresh"; in German "0,75 oz Limettensaft, frisch".
 *
 * A name or note that plain text would read otherwise ("Gin, London dry") is printed in the exact form, in quotes.
 * Throws RangeError for a line without an item or, unless its unit is `top`, an amount, and for line breaks in names.
 */
export function writeSpecText(lines: readonly PrintableLine[], language = "en"): string {
  return lines.map((line) => writeLine(line, language)).join("\n");
}

function writeLine(line: PrintableLine, language: string): string {
  const names = [line.item, ...line.orItems].join(" or ");
  const plain = `${printMeasure(line)} ${names}${line.note === null ? "" : `, ${line.note}`}`;
  if (/[\r\n]/.test(plain))
    throw new RangeError(`"${names}" has a line break and cannot be printed on one line.`);
  const ways = [...(language === "de" ? germanLines(line) : []), plain];
  return ways.find((way) => readsAs(way, line)) ?? printExactly(line);
}

function readsAs(text: string, line: PrintableLine): boolean {
  const [read, ...more] = readSpecText(text);
  if (read === undefined || more.length > 0 || read.error !== null) return false;
  const isSameNames = read.item === line.item && read.orItems.join("\n") === line.orItems.join("\n");
  return isSameNames && read.amount === line.amount && read.unit === line.unit && read.note === line.note;
}
