import { type Reading, RefusedLine } from "#engine/specs/text/entry.ts";

/** Refuses a line of which nothing with a letter in it is left to be an item. */
export function requireName(name: string, text: string, understood: Partial<Reading> = {}): void {
  if (/\p{L}/u.test(name)) return;
  throw new RefusedLine(`No item is named behind "${text.trim()}": write it after the amount.`, understood);
}

/** Refuses "lime wheel and mint sprig": two items, and one line can hold one. */
export function requireOneThing(name: string): void {
  const joint = /\s(and|&|\+|with|plus)\s/i.exec(name);
  if (joint === null) return;
  throw new RefusedLine(`"${joint[1]}" joins two items in "${name}": write one item on a line.`);
}

/** Refuses a measure that no venue can reckon with. */
export function refuseMeasure(written: string, understood: Partial<Reading> = {}): never {
  throw new RefusedLine(
    `"${written}" is not a measure that can be reckoned with: ` +
      "write oz, ml, cl, dash, barspoon, g … or a number of pieces.",
    understood,
  );
}

/** Remarks in the order in which they were written, or null. */
export function joinNotes(notes: readonly (string | null)[]): string | null {
  const said = notes.filter((note) => note !== null && note !== "");
  return said.length === 0 ? null : said.join(", ");
}
