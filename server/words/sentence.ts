/** A sentence as the server says it, cut at its places: "Count {0} again." is ["Count ", " again."]. */
export type Sentence = { written: string; parts: readonly string[] };

/** Cuts a sentence at its places, which are numbered from 0 in the order they stand in. */
export function sentenceOf(written: string): Sentence {
  return { written, parts: written.split(/\{\d+\}/) };
}

/**
 * What stands in the places of a sentence, if a text is that sentence; else null. A place ends where the words after it first
 * come, and is never empty but at the very end, behind a word that it would go on: "in items.csv{0}".
 *
 * @example placesIn(sentenceOf("{0} of {1} stand out."), "2 of 40 stand out.") → ["2", "40"]
 */
export function placesIn({ parts }: Sentence, text: string): string[] | null {
  const [head = "", ...others] = parts;
  const tail = others.at(-1);
  if (tail === undefined) return text === head ? [] : null;
  if (!text.startsWith(head) || !text.endsWith(tail)) return null;
  const places: string[] = [];
  let from = head.length;
  for (const [index, part] of others.entries()) {
    const isLast = index === others.length - 1;
    const at = isLast ? text.length - tail.length : endOfPlace(text, part, from);
    const mayBeEmpty = isLast && tail === "" && /\S$/.test(parts[index] ?? "");
    if (mayBeEmpty ? at < from : at <= from) return null;
    places.push(text.slice(from, at));
    from = at + part.length;
  }
  return places;
}

/** Where a place ends that begins at `from`: not within quotation marks, nor within a pack that is called "box of 50". */
function endOfPlace(text: string, part: string, from: number): number {
  for (let at = text.indexOf(part, from + 1); at !== -1; at = text.indexOf(part, at + 1)) {
    const place = text.slice(from, at);
    const isQuoting = place.startsWith('"') && place.split('"').length % 2 === 0;
    // In "2 × box of 50 of Lime" the second "of" says what it is of.
    const isWithinPack = part === " of " && /^\d+ of /.test(text.slice(at + part.length));
    if (!isQuoting && !isWithinPack) return at;
  }
  return -1;
}

/** "{0} to {1}" is found in many a sentence that it is not. */
export function isStrong({ parts }: Sentence): boolean {
  return parts.length === 1 || (parts.join("").match(/\p{L}/gu)?.length ?? 0) >= 5;
}

/**
 * Two words can be a name or a kind that somebody compares; as a text of its own only more than that is a sentence, or a word
 * that says what follows, as "Contains: {0}." does.
 */
export function standsAlone({ parts, written }: Sentence): boolean {
  const words = parts.join(" ").match(/\p{L}{2,}/gu)?.length ?? 0;
  return (
    words >= 3 ||
    (words === 2 && /[.?!](?: \{\d+\})?$/.test(written)) ||
    /^\p{L}{2,}: \{0\}\.$/u.test(written)
  );
}
