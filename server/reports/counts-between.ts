import type { Facts } from "#engine/facts.ts";
import { foldName } from "#engine/name.ts";
import type { Count } from "#engine/stock/counts.ts";
import { InputError } from "#server/input-error.ts";

/**
 * The counts a variance lies between: those named, else the last two.
 * Throws InputError when a name is not known, or there is no earlier count.
 */
export function countsBetween(
  facts: Facts,
  named: { count?: string | undefined; since?: string | undefined },
): { opening: Count; closing: Count } {
  const { counts } = facts;
  if (counts.length < 2) {
    throw new InputError(
      `A variance lies between two counts; the book has ${counts.length}. Count once more and ask again.`,
    );
  }
  const closingAt = named.count === undefined ? counts.length - 1 : indexOf(counts, named.count);
  const openingAt = named.since === undefined ? closingAt - 1 : indexOf(counts, named.since);
  const opening = counts[openingAt];
  const closing = counts[closingAt];
  if (opening === undefined || closing === undefined) {
    throw new InputError(
      `"${closing?.name ?? named.count}" is the first count; there is none before it to compare with.`,
    );
  }
  if (openingAt >= closingAt) {
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
