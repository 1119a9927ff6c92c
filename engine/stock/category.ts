import { foldName } from "#engine/name.ts";

/** The usual categories of a bar (common practice); of a `spirit` the density may follow from its strength. */
export const USUAL_CATEGORIES = [
  "spirit",
  "liqueur",
  "wine",
  "beer",
  "mixer",
  "produce",
  "dry goods",
] as const;

/**
 * A category as a list writes it, by the name under which the book or custom already knows it: "SPIRITS" → "spirit".
 * What is not known stays as written.
 */
export function knownCategory(written: string, inBook: Iterable<string>): string {
  const bare = (text: string) => foldName(text).replace(/s$/, "");
  const all = [...inBook, ...USUAL_CATEGORIES];
  return all.find((category) => bare(category) === bare(written)) ?? written.trim();
}
