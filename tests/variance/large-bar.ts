import type { Facts } from "#engine/facts.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { addDays } from "#engine/time.ts";
import { barOf, counted, drink, item, pack, sold, spec } from "./small-bar.ts";

export const ITEMS = 150;
const DRINKS = 120;
export const WEEKS = 52;
const FIRST = "2025-11-24";

/** Each drink takes four items; every number follows from its place, so that the bar is always the same. */
const linesOf = (index: number) =>
  [0, 1, 2, 3].map((line) => ({ name: `Item ${(index * 7 + line * 37) % ITEMS}`, ml: 10 + 5 * line }));
const soldOn = (day: number, index: number) => (day * 5 + index * 3 + ((day * index) % 7)) % 6;

/** The largest bar that one screen has to show at once: a year of weekly counts. */
export function largeBar(): { facts: Facts; sales: SaleGroup[] } {
  const names = Array.from({ length: DRINKS }, (_, index) => `Drink ${index}`);
  const sales: SaleGroup[] = [];
  const stock = Array.from({ length: ITEMS }, () => 2_000_000);
  const counts = [];
  for (let day = 0; day <= WEEKS * 7; day++) {
    if (day % 7 === 0) {
      for (const [index, ml] of stock.entries()) {
        const noise = ((day * 13 + index * 29) % 31) - 15;
        counts.push(
          counted(`Week ${day / 7}`, `${addDays(FIRST, day)}T10:00:00Z`, `Item ${index}`, {
            amount: ml + noise,
            unit: "ml",
          }),
        );
      }
    }
    for (const [index, name] of names.entries()) {
      const serves = soldOn(day, index);
      if (serves === 0) continue;
      sales.push(sold(addDays(FIRST, day), name, serves));
      for (const { name: of, ml } of linesOf(index)) {
        const at = Number(of.slice(5));
        stock[at] = (stock[at] ?? 0) - serves * ml;
      }
    }
  }
  const facts = barOf({
    items: stock.map((_, index) => item(`Item ${index}`, { category: `kind ${index % 8}` })),
    packs: stock.map((_, index) => pack(`Item ${index}`, 700)),
    drinks: names.map((name) => drink(name)),
    specs: names.flatMap((name, index) =>
      spec(name, "2025-01-01", ...linesOf(index).map(({ name: of, ml }) => `${ml} ml ${of}`)),
    ),
    counts,
  });
  return { facts, sales };
}
