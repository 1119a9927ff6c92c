import type { EntryFacts, EntryKind } from "#db/stored/entries.ts";
import type { CountRow, Loss } from "#engine/stock/movement.ts";

type Words = { [Kind in EntryKind]: (fact: EntryFacts[Kind]) => string };

const WORDS: Words = {
  count: (row) => `${row.item} in ${row.area}: ${foundWords(row)}`,
  delivery: ({ item, pack, quantity, of, supplier, invoice }) => {
    const what = of === "case" ? `${quantity} × case of ${pack}` : `${quantity} × ${pack}`;
    return `${what} ${item} from ${supplier}${invoice === "" ? "" : ` (${invoice})`}`;
  },
  batch: ({ prep, made, unit }) => `${measured(made, unit)} ${prep}`,
  loss: ({ kind, what, amount, unit }) => `${kind}, ${measured(amount, unit)} ${what}`,
  transfer: ({ direction, place, item, amount, unit }) => {
    const what = `${measured(amount, unit)} ${item}`;
    return direction === "in" ? `${what} moved here from ${place}` : `${what} moved away to ${place}`;
  },
};

/** One entry in a few words. A delivery → "6 × 1 L Dry gin from Quayside Drinks (Q-130)". */
export function factWords<Kind extends EntryKind>(kind: Kind, fact: EntryFacts[Kind]): string {
  return WORDS[kind](fact);
}

/** What was found on a shelf, in a few words. */
export function foundWords({ full, parts, grossG, amount, unit, pack }: CountRow): string {
  const found = [
    ...(full === null || full === 0 ? [] : [`${full} full`]),
    ...(parts.length === 0 ? [] : [`open ${parts.join(", ")}`]),
    ...(grossG.length === 0 ? [] : [`on the scale ${grossG.map((gross) => `${gross} g`).join(", ")}`]),
    ...(amount === null ? [] : [unit === null ? `${amount}` : measured(amount, unit)]),
  ].join(" and ");
  return `${found === "" ? "none" : found}${pack === null ? "" : ` (${pack})`}`;
}

/** Pieces are said by their number alone: 2 each of Lime → "2" before "Lime". */
function measured(amount: number, unit: Loss["unit"]): string {
  if (unit === "each" || unit === "piece") return String(amount);
  return `${amount} ${unit === "serve" && amount !== 1 ? "serves" : unit}`;
}
