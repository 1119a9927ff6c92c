import { ratio } from "fuzzball";
import { quote } from "#db/book/quote.ts";
import { foldName } from "#engine/name.ts";

/** Likeness, 0 to 100, from which a name is worth proposing. */
const LIKENESS_LEAST = 70;
/** Likeness takes time by the square of the length; nobody calls anything by more. */
const LONGEST = 200;

/** The likeliest name for one that is not known, as the end of a message; "" when none is near. */
export function didYouMean(name: string, known: Iterable<string>): string {
  const folded = foldName(name);
  if (folded === "" || folded.length > LONGEST) return "";
  let best = { name: "", likeness: LIKENESS_LEAST };
  for (const each of known) {
    if (each.length > LONGEST) continue;
    const likeness = ratio(folded, foldName(each), { full_process: false });
    if (likeness > best.likeness || (likeness === best.likeness && best.name === "")) {
      best = { name: each, likeness };
    }
  }
  return best.name === "" ? "" : `; did you mean ${quote(best.name)}?`;
}
