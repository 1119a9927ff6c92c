import { currencyDigits } from "#engine/currency.ts";
import type { Facts } from "#engine/facts.ts";
import { saleAsks, type UnmappedSale } from "#engine/sales/asks.ts";
import { likelyMeanings, type Meaning } from "#engine/sales/likely-meaning.ts";
import type { BusinessDate } from "#engine/time.ts";
import type { World } from "#server/world.ts";

/** A ring name the book does not know, what it took at the till, and what it may mean. */
export type Unmapped = {
  ringName: string;
  quantity: number;
  net: number;
  reason: UnmappedSale["reason"];
  suggestions: Meaning[];
};

/** What was sold over business dates without a meaning in the book, most money first. */
export async function unmappedFor(
  world: World,
  range: { from?: BusinessDate | undefined; to?: BusinessDate | undefined },
) {
  const { from = "0001-01-01", to = "9999-12-31" } = range;
  const sold = saleAsks(world.facts.catalogue, await world.salesBetween({ from, to }));
  return {
    unmapped: withMeanings(world.facts, inMajorUnits(world.facts, sold.unmapped)),
    modifiers: sold.unknownModifiers.sort((a, b) => b.quantity - a.quantity),
    coverage: sold.quantity === 0 ? 1 : sold.mappedQuantity / sold.quantity,
  };
}

/** Adds what each name may mean, most money first. */
export function withMeanings(
  { catalogue }: Facts,
  unmapped: readonly Omit<Unmapped, "suggestions">[],
): Unmapped[] {
  return unmapped
    .map((sale) => ({ ...sale, suggestions: likelyMeanings(catalogue, sale.ringName) }))
    .sort((a, b) => b.net - a.net);
}

function inMajorUnits({ catalogue }: Facts, unmapped: readonly UnmappedSale[]) {
  const minor = 10 ** currencyDigits(catalogue.venue.currency);
  return unmapped.map(({ ringName, quantity, netMinor, reason }) => ({
    ringName,
    quantity,
    net: netMinor / minor,
    reason,
  }));
}
