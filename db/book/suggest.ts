import { extract } from "fuzzball";
import { quote } from "#db/book/quote.ts";

/** Likeness, 0 to 100, from which a name is worth proposing. */
const LIKENESS_LEAST = 70;
const LONGEST = 200;

/** The likeliest name for one that is not known, as the end of a message; "" when none is near. */
export function didYouMean(name: string, known: Iterable<string>): string {
  // Likeness takes time by the square of the length.
  if (name.length > LONGEST) return "";
  const names = [...known].filter((each) => each.length <= LONGEST);
  const [best] = extract(name, names, { limit: 1, cutoff: LIKENESS_LEAST });
  return best === undefined ? "" : `; did you mean ${quote(best[0])}?`;
}
