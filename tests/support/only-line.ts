import { expect } from "vitest";
import type { SpecTextLine } from "#engine/specs/text/entry.ts";
import { readSpecText } from "#engine/specs/text/read.ts";

/** The one entry that a line of recipe text gives; it must give no other. */
export function only(text: string, items?: readonly string[]): SpecTextLine {
  const [line, ...more] = readSpecText(text, items === undefined ? {} : { items });
  expect(more).toEqual([]);
  if (line === undefined) throw new Error(`"${text}" gave no entry.`);
  return line;
}
