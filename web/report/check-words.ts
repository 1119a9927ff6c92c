import { formatShare, listWords } from "../format.ts";
import type { OwnerReport } from "./query.ts";

type Rival = OwnerReport["checks"][number]["rivals"][number];

/** What else explains the same numbers: "Or, by the same numbers: breakage (30%) or delivery short (12%)." */
export function rivalWords(rivals: readonly Rival[]): string {
  const named = rivals.map(
    ({ kind, what, probability }) =>
      `${kind.replaceAll("-", " ")} of ${[what].flat().join(" / ")} (${formatShare(probability)})`,
  );
  return `The same numbers could be: ${listWords(named)}.`;
}
