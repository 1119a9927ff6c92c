import { baseAmount, type Catalogue } from "#engine/catalogue.ts";
import { foldName } from "#engine/name.ts";
import type { RingName } from "#engine/sales/ring.ts";
import { packsInForce } from "#engine/stock/pack.ts";
import type { BusinessDate } from "#engine/time.ts";

/** What one sale of a ring name is. `amount` is in the item's base unit. */
export type SoldAs =
  | { kind: "drink"; drink: string; serves: number }
  | { kind: "item"; item: string; amount: number }
  | { kind: "ignore" }
  | { kind: "unknown" };

/**
 * What the till's name means on a business date: its row in the book, else the drink of that name, else
 * the item of that name by the container of its smallest pack.
 */
export function soldAs(catalogue: Catalogue, ringName: string, date: BusinessDate): SoldAs {
  const folded = foldName(ringName);
  const row = catalogue.ringNames.get(folded);
  if (row !== undefined) return fromRow(catalogue, row, date);
  const drink = catalogue.drinkNames.get(folded);
  if (drink !== undefined) return { kind: "drink", drink, serves: 1 };
  const item = catalogue.itemNames.get(folded);
  return item === undefined ? { kind: "unknown" } : container(catalogue, item, date, 1);
}

function fromRow(catalogue: Catalogue, row: RingName, date: BusinessDate): SoldAs {
  const { soldAs: meaning, serves, amount, unit } = row;
  if (meaning.kind === "ignore") return meaning;
  if (meaning.kind === "drink") return { kind: "drink", drink: meaning.drink, serves };
  const { item } = meaning;
  if (amount === null || unit === null) return container(catalogue, item, date, serves);
  return { kind: "item", item, amount: baseAmount(catalogue, { item, amount, unit }) * serves };
}

/** Without an amount and without a pack nothing says how much was sold: only a piece is a piece. */
function container(catalogue: Catalogue, item: string, date: BusinessDate, serves: number): SoldAs {
  const sizes = packsInForce(catalogue, item, date).map((pack) => baseAmount(catalogue, pack));
  if (sizes.length > 0) return { kind: "item", item, amount: Math.min(...sizes) * serves };
  return catalogue.items.get(item)?.base === "each"
    ? { kind: "item", item, amount: serves }
    : { kind: "unknown" };
}
