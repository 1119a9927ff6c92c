import type { BaseUnit } from "#engine/measure/units.ts";
import type { UsedInput } from "#engine/stock/movement.ts";

/** An input of a card: what was planned of it, in its base unit. */
export type PlannedInput = { item: string; base: BaseUnit; amount: number };

/** What a batch that gave more or less than its card took: as much as the card says, or in proportion. */
export type WentIn = "as the card says" | "in proportion";

/** A batch this far from its card is another size, nearer than this it is the card's batch with its own yield. */
const OTHER_SIZE = 0.2;
const SAME_SIZE = 0.005;

/** Whether one has to be asked what went in, and what is more likely. */
export function likelyWentIn(made: number, make: number): WentIn | undefined {
  const off = Math.abs(made / make - 1);
  if (off <= SAME_SIZE) return undefined;
  return off <= OTHER_SIZE ? "as the card says" : "in proportion";
}

/**
 * What to record beside a batch: whatever was typed, and the card's weights where they gave another amount than it says.
 *
 * Pressed or cut fruit is recorded only where it was counted: nobody stops at the card's number. Nothing is recorded of what
 * went in by the spec, so that the spec goes on saying it.
 */
export function inputsToRecord({
  planned,
  typed,
  wentIn,
}: {
  planned: readonly PlannedInput[];
  /** By item, in base units. */
  typed: ReadonlyMap<string, { amount: number; base: BaseUnit }>;
  wentIn: WentIn | undefined;
}): UsedInput[] {
  const asCard = planned.flatMap(({ item, base, amount }) =>
    wentIn === "as the card says" && base !== "each" && !typed.has(item)
      ? [{ item, amount: Math.round(amount * 10) / 10, unit: base }]
      : [],
  );
  return [...asCard, ...[...typed].map(([item, { amount, base }]) => ({ item, amount, unit: base }))];
}
