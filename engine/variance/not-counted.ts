import type { Facts } from "#engine/facts.ts";
import type { Count } from "#engine/stock/counts.ts";

/**
 * Stocked items that stand somewhere, are bought or were once counted, but that one of the two counts did
 * not look at: not counted is not zero. What is made to order, and what is neither bought nor counted
 * (water), is left out; so is what was counted short, which `countedShort` names.
 */
export function notCounted({ catalogue, book, counts }: Facts, opening: Count, closing: Count): string[] {
  const bought = new Set([...book.packs, ...book.deliveries].map(({ item }) => item));
  const shelved = new Set(book.areas.map(({ item }) => item));
  const counted = new Set(counts.flatMap(({ holdings }) => [...holdings.keys()]));
  return [...catalogue.items.values()]
    .filter(({ name, stocked }) => stocked && (bought.has(name) || shelved.has(name) || counted.has(name)))
    .filter(({ name }) => !opening.holdings.has(name) || !closing.holdings.has(name))
    .map(({ name }) => name);
}

/** The areas in which an item that both counts looked at stands but was not counted, by item. */
export function countedShort(opening: Count, closing: Count): Record<string, string[]> {
  const short = new Map<string, string[]>();
  for (const count of [closing, opening]) {
    for (const [item, areas] of count.missedAreas) {
      if (!opening.holdings.has(item) || !closing.holdings.has(item)) continue;
      short.set(item, [...new Set([...(short.get(item) ?? []), ...areas])]);
    }
  }
  return Object.fromEntries(short);
}
