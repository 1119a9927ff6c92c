import type { UnitCosts } from "#engine/costing/unit-cost.ts";
import { currencyDigits } from "#engine/currency.ts";
import type { DemandModel } from "#engine/demand/model.ts";
import { servedReader } from "#engine/demand/series.ts";
import type { ServeUse } from "#engine/demand/serve-use.ts";
import type { Facts } from "#engine/facts.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { addDays, type BusinessDate } from "#engine/time.ts";

/**
 * What a base unit of each item earns in the drinks that cannot be made without it, in major units: their
 * price less the cost of all that goes into them, by the item's amount in them.
 *
 * 10 ml of a liqueur in a drink that contributes 9.00 → 0.90 a ml. An item in no priced drink is left out.
 */
export function lostMargins(
  facts: Facts,
  sales: readonly SaleGroup[],
  {
    model,
    readUse,
    costs,
    dates,
  }: {
    model: DemandModel;
    readUse: (what: string, date: BusinessDate) => ServeUse;
    costs: UnitCosts;
    dates: readonly BusinessDate[];
  },
): Map<string, number> {
  const prices = takenPerServe(facts, sales, model.asOf);
  const lost = new Map<string, { margin: number; amount: number }>();
  for (const date of dates) {
    for (const { what, mean } of model.on(date)) {
      const amounts = amountsOf(readUse(what, date));
      const margin = contribution(prices.get(what) ?? listPrice(facts, what), amounts, costs);
      if (margin === null) continue;
      for (const [item, amount] of amounts) {
        const held = lost.get(item) ?? { margin: 0, amount: 0 };
        held.margin += mean * margin;
        held.amount += mean * amount;
        lost.set(item, held);
      }
    }
  }
  return new Map(
    [...lost].flatMap(([item, { margin, amount }]) =>
      amount > 0 ? [[item, margin / amount] as [string, number]] : [],
    ),
  );
}

/** Money a serve really brought over the last quarter, by drink. */
export function takenPerServe(
  facts: Facts,
  sales: readonly SaleGroup[],
  asOf: BusinessDate,
): Map<string, number> {
  const readServed = servedReader(facts.catalogue);
  const from = addDays(asOf, -91);
  const unit = 10 ** currencyDigits(facts.catalogue.venue.currency);
  const taken = new Map<string, { money: number; serves: number }>();
  for (const sale of sales) {
    if (sale.businessDate >= asOf || sale.businessDate < from) continue;
    const served = readServed(sale);
    if (served === undefined) continue;
    const held = taken.get(served.what) ?? { money: 0, serves: 0 };
    held.money += sale.netMinor / unit;
    held.serves += sale.quantity * served.serves;
    taken.set(served.what, held);
  }
  return new Map(
    [...taken].flatMap(([what, { money, serves }]) =>
      money > 0 && serves > 0 ? [[what, money / serves] as [string, number]] : [],
    ),
  );
}

/** A drink's price on the menu in major units; null where none is stated. */
export function listPrice({ catalogue }: Facts, what: string): number | null {
  const price = catalogue.drinks.get(what)?.priceMinor ?? null;
  return price === null ? null : price / 10 ** currencyDigits(catalogue.venue.currency);
}

/** A serve's items, fruit by the part of it most asked for. */
function amountsOf({ items, fruit }: ServeUse): Map<string, number> {
  const amounts = new Map(items.map(({ item, mean }) => [item, mean]));
  for (const { source, mean } of fruit)
    amounts.set(source, (amounts.get(source) ?? 0) + Math.max(0, ...mean));
  return amounts;
}

function contribution(price: number | null, amounts: Map<string, number>, costs: UnitCosts): number | null {
  if (price === null) return null;
  let margin = price;
  // An item without a price costs little beside the drink: leaving it out errs by its few cents.
  for (const [item, amount] of amounts) margin -= amount * (costs.get(item) ?? 0);
  return margin > 0 ? margin : null;
}
