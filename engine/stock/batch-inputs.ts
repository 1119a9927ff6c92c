import type { Batch, BatchInput, UsedInput } from "#engine/stock/movement.ts";

/**
 * What batches are recorded to have used; those that went as their spec says are left out.
 *
 * Batches of one prep at one moment are told apart by their number, in the order of the batches.
 */
export function inputsByBatch({
  batches,
  batchInputs,
}: {
  batches: readonly Batch[];
  batchInputs: readonly BatchInput[];
}): Map<Batch, UsedInput[]> {
  const found = new Map<Batch, UsedInput[]>();
  if (batchInputs.length === 0) return found;
  const byKey = new Map(numbered(batches).map(({ batch, batchNo }) => [keyOf({ ...batch, batchNo }), batch]));
  for (const { item, amount, unit, ...which } of batchInputs) {
    const batch = byKey.get(keyOf(which));
    if (batch !== undefined) found.set(batch, [...(found.get(batch) ?? []), { item, amount, unit }]);
  }
  return found;
}

/** Batches, each with its number among those of its prep and moment: 1 for the first. */
export function numbered<Made extends Pick<Batch, "at" | "prep">>(
  batches: readonly Made[],
): { batch: Made; batchNo: number }[] {
  const last = new Map<string, number>();
  return batches.map((batch) => {
    const moment = keyOf({ ...batch, batchNo: 0 });
    const batchNo = (last.get(moment) ?? 0) + 1;
    last.set(moment, batchNo);
    return { batch, batchNo };
  });
}

function keyOf({ at, prep, batchNo }: Pick<BatchInput, "at" | "prep" | "batchNo">): string {
  return `${at} ${batchNo} ${prep}`;
}
