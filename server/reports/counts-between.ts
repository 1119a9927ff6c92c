import type { Facts } from "#engine/facts.ts";
import { foldName } from "#engine/name.ts";
import type { Count } from "#engine/stock/counts.ts";
import { wholeCounts } from "#engine/stock/whole-counts.ts";
import { InputError } from "#server/input-error.ts";
import { YoungBookError } from "#server/young-book-error.ts";

export type CountsChosen = {
  count?: string | undefined;
  since?: string | undefined;
  /** Whether a count of a few items may not stand where none is named. */
  whole?: boolean | undefined;
};

/**
 * The counts a variance lies between: those named, else the last two, or the last two that are no spot counts.
 * Throws InputError when a name is not known, or there is no earlier count; YoungBookError when there are not two at all.
 */
export function countsBetween(
  { counts }: Pick<Facts, "counts">,
  { count, since, whole = false }: CountsChosen,
): { opening: Count; closing: Count } {
  if (counts.length < 2) {
    throw new YoungBookError(
      "second-count",
      `A variance lies between two counts; the book has ${counts.length}. Count once more and ask again.`,
    );
  }
  const eligible = whole ? wholeCounts(counts) : counts;
  const lastBefore = (at: number) => eligible.findLast((one) => counts.indexOf(one) < at);
  const closing = count === undefined ? eligible.at(-1) : counts[indexOf(counts, count)];
  const closingAt = closing === undefined ? -1 : counts.indexOf(closing);
  const opening = since === undefined ? lastBefore(closingAt) : counts[indexOf(counts, since)];
  if (opening === undefined && since === undefined && closingAt > 0) {
    throw new InputError(
      `Before "${closing?.name}" only a few items were counted, too few to compare with. Name a count to start from, or count once more.`,
    );
  }
  if (opening === undefined || closing === undefined) {
    throw new InputError(
      `"${closing?.name ?? count}" is the first count; there is none before it to compare with.`,
    );
  }
  if (counts.indexOf(opening) >= closingAt) {
    throw new InputError(
      `The count "${opening.name}" is not before "${closing.name}"; name the earlier one with --since.`,
    );
  }
  return { opening, closing };
}

function indexOf(counts: readonly Count[], name: string): number {
  const at = counts.findIndex((count) => foldName(count.name) === foldName(name));
  if (at >= 0) return at;
  const known = counts.slice(-5).map((count) => `"${count.name}"`);
  throw new InputError(`No count is named "${name}". The latest are ${known.join(", ")}.`);
}
