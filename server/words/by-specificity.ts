import { groupBy } from "#engine/catalogue.ts";
import type { Sentence } from "#server/words/sentence.ts";

/** Letters of the beginning by which sentences are looked up; those that begin with a place are tried for every text. */
const HEAD = 4;

/** Which sentences a text may be, those with most words of their own first. */
export function bySpecificity(sentences: readonly Sentence[]): (text: string) => readonly Sentence[] {
  const weight = ({ parts }: Sentence) => parts.reduce((sum, part) => sum + part.length, 0);
  const sorted = sentences.toSorted((a, b) => weight(b) - weight(a));
  const isOpen = ({ parts: [head = ""] }: Sentence) => head.length < HEAD;
  const byHead = groupBy(sorted, (sentence) =>
    isOpen(sentence) ? "" : (sentence.parts[0] ?? "").slice(0, HEAD),
  );
  const open = byHead.get("") ?? [];
  return (text) => [...(byHead.get(text.slice(0, HEAD)) ?? []), ...open];
}
