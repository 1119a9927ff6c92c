/**
 * Where the word stands in a typed line that a message about it is on, as [start, end]: the first words in the message's
 * quotes (English or German) that the line has too, as whole words, else the item's name, else the whole line.
 *
 * "rinse absinthe" with `"rinse" is not a measure …` → [0, 5].
 */
export function markedWord(
  typed: string,
  { item, error }: { item: string | null; error: string | null },
): [start: number, end: number] {
  const quoted = [...(error ?? "").matchAll(/["„]([^"“]+)["“]/g)].map(([, words = ""]) => words);
  for (const words of [...quoted, ...(item === null ? [] : [item])]) {
    const start = placeOf(words, typed);
    if (start !== undefined) return [start, start + words.length];
  }
  const start = typed.length - typed.trimStart().length;
  return [start, typed.trimEnd().length];
}

function placeOf(words: string, typed: string): number | undefined {
  const escaped = words.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
  const isWord = (char: string | undefined) => char !== undefined && /[\p{L}\p{N}]/u.test(char);
  const before = isWord(words.at(0)) ? "(?<![\\p{L}\\p{N}])" : "";
  const behind = isWord(words.at(-1)) ? "(?![\\p{L}\\p{N}])" : "";
  return new RegExp(`${before}${escaped}${behind}`, "iu").exec(typed)?.index;
}
