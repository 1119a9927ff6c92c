import { parse, type Token } from "@messageformat/parser";

/** The places of an ICU message that values go into, each once, in the order of the alphabet. */
export function placesOf(message: string): string[] {
  const names = new Set<string>();
  const visit = (tokens: readonly Token[]) => {
    for (const token of tokens) {
      if ("arg" in token) names.add(token.arg);
      if ("cases" in token) for (const { tokens: inner } of token.cases) visit(inner);
    }
  };
  visit(parse(message));
  return [...names].sort();
}
