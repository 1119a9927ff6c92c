import type { SaleGroup } from "#engine/sales/tally.ts";

/** Rings so many serves of a day's sales of a drink under another name. */
export function ring(
  sales: readonly SaleGroup[],
  { on, drink, as, serves }: { on: string; drink: string; as: string; serves: number },
): SaleGroup[] {
  return sales.flatMap((sale) =>
    sale.businessDate === on && sale.ringName === drink
      ? [
          { ...sale, quantity: sale.quantity - serves },
          { ...sale, ringName: as, quantity: serves },
        ]
      : [sale],
  );
}
