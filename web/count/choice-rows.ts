import type { CountRow } from "#engine/stock/movement.ts";
import { bare, type Difference, emptied } from "./differences.ts";

/**
 * The entries that make one finding the one that stands. Counted twice: that finding again. Two ways: the others of the
 * place are emptied, so that nothing counts twice; each with the moment and the name of whoever chose.
 */
export function choiceRows(
  { kind, findings }: Difference,
  chosen: CountRow,
  { at, by }: { at: string; by: string },
): CountRow[] {
  if (kind === "counted-twice") return [bare(chosen)];
  const isAmount = chosen.pack === null;
  const others = findings.filter(({ pack }) => (pack === null) !== isAmount);
  return others.map((other) => ({ ...bare(other), ...emptied(other), at, by }));
}
