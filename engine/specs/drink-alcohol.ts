import { type Catalogue, itemNamed } from "#engine/catalogue.ts";
import { type Alcohol, alcoholOf } from "#engine/measure/alcohol.ts";
import { foldName } from "#engine/name.ts";
import { billOf } from "#engine/specs/bill.ts";
import { serveLines, servePortions } from "#engine/specs/serve.ts";
import type { BusinessDate } from "#engine/time.ts";

/** Alcohol in a drink, and what in it may have some though the book states no strength. */
export type DrinkAlcohol = Alcohol & { unknown: string[] };

/** Categories, in the words of the trade, of what has alcohol. */
const HAS_ALCOHOL =
  /\b(?:spirit|liqueur|wine|vermouth|fortified|sherry|port|beer|cider|bitters|amaro|sake)s?\b/;

/**
 * Alcohol in one serve of a drink as its spec has it on a date, preps opened up to what is in them; undefined before its
 * first version.
 *
 * Volumes of ethanol add up however much a mixture shrinks. Strengths are % vol of the items. What has no strength in
 * the book counts as none and, where its category has alcohol, is listed: the figure is then too low.
 * 60 ml of 40 % and 30 ml of 18 % → 29.4 ml of ethanol, 23.2 g, 1.66 US standard drinks, 2.9 UK units.
 */
export function alcoholInDrink(
  catalogue: Catalogue,
  drink: string,
  date: BusinessDate,
): DrinkAlcohol | undefined {
  const lines = serveLines(catalogue, drink, date);
  if (lines === undefined) return undefined;
  const asked = lines.map((line) => ({ line, factor: 1 }));
  const portions = servePortions(catalogue, catalogue.drinks.get(drink), asked);
  const poured = billOf(catalogue, portions, { date, raw: true }).items.filter(
    ({ item }) => itemNamed(catalogue, item).base === "ml",
  );
  const ethanolMl = poured.reduce(
    (sum, { item, amount }) => sum + (amount * (itemNamed(catalogue, item).abv ?? 0)) / 100,
    0,
  );
  const unknown = poured.flatMap(({ item }) => {
    const { abv, category } = itemNamed(catalogue, item);
    return abv === null && HAS_ALCOHOL.test(foldName(category)) ? [item] : [];
  });
  return { ...alcoholOf(ethanolMl), unknown };
}
