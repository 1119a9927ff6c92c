import { currencyDigits } from "#engine/currency.ts";
import type { Facts } from "#engine/facts.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import { batchAsks, saleAsks } from "#engine/sales/asks.ts";
import { expectedUse, usedSd } from "#engine/sales/expected-use.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import type { BusinessDate } from "#engine/time.ts";

export type UseReport = {
  from: BusinessDate;
  to: BusinessDate;
  /** Base units, in the order of items.csv; items nothing asked for are left out. */
  items: { item: string; base: BaseUnit; expected: number; sd: number }[];
  /** Sold, but not known to the book; `net` in major units. */
  unmapped: { ringName: string; quantity: number; net: number; reason: "unknown" | "no-version" }[];
  unmappedModifiers: { modifier: string; quantity: number }[];
  /** Share of the sold quantity that is mapped; 1 when nothing was sold. */
  coverage: number;
};

/**
 * Expected use by item over business dates, both included: what the drinks sold use, and what the
 * batches made use. `raw` opens every prep up to what is bought, and leaves the batches out.
 */
export function useReport(
  facts: Facts,
  sales: readonly SaleGroup[],
  { from, to, raw = false }: { from: BusinessDate; to: BusinessDate; raw?: boolean },
): UseReport {
  const { catalogue, book, dividers } = facts;
  const sold = saleAsks(
    catalogue,
    sales.filter(({ businessDate }) => isWithin(businessDate, from, to)),
    { raw },
  );
  const batches = raw
    ? []
    : book.batches.filter(({ at }) => isWithin(businessDateOf(at, catalogue.venue), from, to));
  const use = expectedUse([...sold.asks, ...batchAsks(catalogue, { ...book, batches })], {
    dividersOf: (item) => dividers.get(item) ?? [],
  });
  const minor = 10 ** currencyDigits(catalogue.venue.currency);
  return {
    from,
    to,
    items: [...catalogue.items.values()].flatMap(({ name, base }) => {
      const used = use.get(name);
      return used === undefined ? [] : [{ item: name, base, expected: used.amount, sd: usedSd(used) }];
    }),
    unmapped: sold.unmapped
      .map(({ ringName, quantity, netMinor, reason }) => ({
        ringName,
        quantity,
        net: netMinor / minor,
        reason,
      }))
      .sort((a, b) => b.net - a.net),
    unmappedModifiers: sold.unknownModifiers,
    coverage: sold.quantity === 0 ? 1 : sold.mappedQuantity / sold.quantity,
  };
}

function isWithin(date: BusinessDate, from: BusinessDate, to: BusinessDate): boolean {
  return date >= from && date <= to;
}
