import type { CountRow } from "#engine/stock/movement.ts";
import { formatNumber, formatPlain, listWords, withUnit } from "../format.ts";
import { say } from "../texts/say.ts";

type Found = Pick<CountRow, "pack" | "full" | "parts" | "grossG" | "amount" | "unit">;

/** What a row says, as one would call it across the cellar: "3 full and one at 7/10, of 1 L"; "none"; "200 ml". */
export function foundWords({ pack, full, parts, grossG, amount, unit }: Found): string {
  if (amount !== null) {
    if (amount === 0) return say("count.none");
    return unit === "each" || unit === null
      ? formatPlain(amount)
      : withUnit(formatNumber(amount, amount % 1 === 0 ? 0 : 1), unit);
  }
  const words = [
    ...(full === null || full === 0 ? [] : [say("count.full", { count: full })]),
    ...parts.map((part) => say("count.oneAt", { tenths: tenthsWords(part) })),
    ...(grossG.length === 0
      ? []
      : [
          say("count.weighed", {
            weights: listWords(grossG.map((grams) => withUnit(formatPlain(grams), "g"))),
          }),
        ]),
  ];
  if (words.length === 0) return say("count.none");
  const found = listWords(words);
  return pack === null ? found : say("count.ofPack", { found, pack });
}

/** A level in tenths, to the half: 0.7 → "7", 0.75 → "7½", 0.05 → "½". */
export function tenthsWords(part: number): string {
  const halves = Math.round(part * 20);
  if (halves % 2 === 0) return String(halves / 2);
  return `${halves === 1 ? "" : Math.floor(halves / 2)}½`;
}

/** The same for all rows of an item in an area. */
export function allFoundWords(rows: readonly Found[]): string {
  const none = say("count.none");
  const words = rows.map(foundWords).filter((text) => text !== none);
  return words.length === 0 ? none : words.join("; ");
}
