import type { BusinessDate, Instant } from "#engine/time.ts";

/** What is left of one batch. */
export type Layer = {
  madeOn: BusinessDate;
  madeAt: Instant;
  /** Found by a count and older than any batch on record: made then or before. */
  orOlder: boolean;
  quantity: number;
  useBy: BusinessDate | null;
};

/** Below this an amount is the dust of floating point. */
const DUST = 1e-9;

/**
 * What was counted, laid to batches: the oldest is used first, so what is left is of the newest.
 * What no batch on record explains is as old as the oldest thing known of the item.
 *
 * 900 found, batches of 500 on the 1st and 500 on the 3rd → 400 of the 1st, 500 of the 3rd.
 */
export function layersOfCount(quantity: number, batches: readonly Layer[], oldest: Layer): Layer[] {
  const layers: Layer[] = [];
  let left = quantity;
  for (const batch of [...batches].sort(byAge).reverse()) {
    const held = Math.min(left, batch.quantity);
    if (held > DUST) layers.unshift({ ...batch, quantity: held });
    left -= held;
  }
  return left > DUST ? [{ ...oldest, quantity: left, orOlder: true }, ...layers] : layers;
}

/** Oldest first. */
export function byAge(a: Layer, b: Layer): number {
  return a.madeAt < b.madeAt ? -1 : a.madeAt > b.madeAt ? 1 : 0;
}

export function isGood({ useBy }: Layer, date: BusinessDate): boolean {
  return useBy === null || useBy >= date;
}

/**
 * Layers after a day's use: the oldest that is in date first; then, as somebody must have, what was past its date.
 * Use beyond all there was takes nothing more, since a shelf cannot hold less than nothing.
 */
export function afterUse(layers: readonly Layer[], amount: number, date: BusinessDate): Layer[] {
  const past = layers.filter((layer) => !isGood(layer, date));
  return takeFrom(layers, [...layers.filter((layer) => isGood(layer, date)), ...past.reverse()], amount);
}

/** Layers after a loss: what is past its date is thrown out first, then the oldest. */
export function afterLoss(layers: readonly Layer[], amount: number, date: BusinessDate): Layer[] {
  const past = layers.filter((layer) => !isGood(layer, date));
  return takeFrom(layers, [...past, ...layers.filter((layer) => isGood(layer, date))], amount);
}

function takeFrom(layers: readonly Layer[], inTurn: readonly Layer[], amount: number): Layer[] {
  const taken = new Map<Layer, number>();
  let left = amount;
  for (const layer of inTurn) {
    const part = Math.min(left, layer.quantity);
    taken.set(layer, part);
    left -= part;
  }
  return layers
    .map((layer) => ({ ...layer, quantity: layer.quantity - (taken.get(layer) ?? 0) }))
    .filter(({ quantity }) => quantity > DUST);
}

export function sumOf(layers: readonly Layer[]): number {
  return layers.reduce((sum, { quantity }) => sum + quantity, 0);
}

/**
 * How much of the good stock the coming days can use before it is past its date, each day taking the oldest first.
 * What is left on the last day still counts: it stands ready for a busier night.
 *
 * 800 to be used by today, 500 needed today and 500 tomorrow → 500 usable.
 */
export function usableStock(
  layers: readonly Layer[],
  days: readonly { date: BusinessDate; amount: number }[],
): number {
  let held = [...layers];
  let wasted = 0;
  for (const { date, amount } of days) {
    const good = held.filter((layer) => isGood(layer, date));
    wasted += sumOf(held) - sumOf(good);
    held = afterUse(good, amount, date);
  }
  return sumOf(layers) - wasted;
}
