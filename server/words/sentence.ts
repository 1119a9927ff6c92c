/** A sentence as the server says it, cut at its places: "Count {0} again." is ["Count ", " again."]. */
export type Sentence = { written: string; parts: readonly string[] };

/** Cuts a sentence at its places, which are numbered from 0 in the order they stand in. */
export function sentenceOf(written: string): Sentence {
  return { written, parts: written.split(/\{\d+\}/) };
}

/**
 * What stands in the places of a sentence, if a text is that sentence; else null. A place is never empty and ends where the
 * words after it first come.
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
    const at = isLast ? text.length - tail.length : text.indexOf(part, from + 1);
    if (at <= from) return null;
    places.push(text.slice(from, at));
    from = at + part.length;
  }
  return places;
}
