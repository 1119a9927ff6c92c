import { figureOf, type PrintableLine } from "#engine/specs/text/printed-line.ts";

/** Units as a German card has them; of the others the code is the same word. Pieces need none before what is counted. */
const WORDS: Readonly<Record<string, string>> = {
  dash: "Spritzer",
  barspoon: "Barlöffel",
  drop: "Tropfen",
  splash: "Schuss",
  tbsp: "EL",
  tsp: "TL",
  each: "Stück",
};

/** A line in the ways that a German card may have it, the plainest first: 1 each → "1 Limettenrad", "1 Stück Limettenrad". */
export function germanLines(line: PrintableLine): string[] {
  const names = [line.item, ...line.orItems].join(" oder ");
  const remark = line.note === null ? "" : `, ${line.note}`;
  if (line.unit === "top") {
    const bracketed = line.note === null ? "" : ` (${line.note})`;
    return [`mit ${names} auffüllen${bracketed}`];
  }
  const figure = figureOf(line).replace(".", ",");
  const measured = `${figure} ${WORDS[line.unit ?? ""] ?? line.unit} ${names}${remark}`;
  return line.unit === "each" ? [`${figure} ${names}${remark}`, measured] : [measured];
}
