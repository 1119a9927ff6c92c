import type { CutAsk } from "#engine/specs/bill.ts";

/** Pieces of each fruit that one making asks: the largest, over the parts, of the shares asked. */
export function fruitOf({ cuts }: { cuts: readonly CutAsk[] }): { item: string; amount: number }[] {
  const parts = new Map<string, Map<string, number>>();
  for (const cut of cuts) {
    const shares = parts.get(cut.source) ?? new Map<string, number>();
    for (const part of cut.parts) shares.set(part, (shares.get(part) ?? 0) + cut.shares);
    parts.set(cut.source, shares);
  }
  return [...parts].map(([item, shares]) => ({ item, amount: Math.max(...shares.values()) }));
}
