import { isBareDescription } from "#engine/specs/text/descriptions.ts";
import { isCountable } from "#engine/specs/text/piece-words.ts";

/** What a flavour is bottled as: such a word alone names nothing that a bar has. */
const FLAVOURED =
  /^(?:dram|liqueur|cordial|syrup|nectar|juice|pur[eé]e|shrub|schnapps|extract|essence|tincture|concentrate)$/i;

/** A spirit flavoured, whose other name is a liqueur: "cherry brandy/liqueur". */
const SPIRIT = /^(?:brandy|rum|gin|vodka|whisk(?:e)?y|tequila)$/i;

/** Drinks of one flavour that come in two kinds: "coconut cream/milk", "ginger beer/ale". */
const POURED: readonly (readonly [flavour: RegExp, form: RegExp])[] = [
  [/^coconut$/i, /^(?:milk|cream|water)$/i],
  [/^(?:ginger|root)$/i, /^(?:beer|ale)$/i],
];

/** Flavours that are also descriptions: "agave nectar/syrup". */
const FLAVOUR = /\b(?:agave|maple|cane)$/i;

/** "dram/liqueur" behind "allspice" are two words for one thing; "beer/ale" behind "ginger" are two things. */
export function isSameThing(first: string, second: string): boolean {
  return bareForm(second, first) !== undefined && !/^(?:milk|cream|water|beer|ale)$/i.test(second);
}

/**
 * The whole name of a second form: "liqueur" behind "allspice dram" → "allspice liqueur", "ale" behind "ginger beer" →
 * "ginger ale"; undefined where the second is a name by itself ("rum" behind "white rum", "cordial" behind "simple
 * syrup", "cream" behind "almond milk").
 */
export function bareForm(second: string, first: string): string | undefined {
  const { flavour, form } = parted(first);
  if (flavour === undefined) return undefined;
  const isForm =
    (FLAVOURED.test(second) && FLAVOURED.test(form)) ||
    (/^liqueur$/i.test(second) && SPIRIT.test(form)) ||
    (/^brandy$/i.test(second) && FLAVOURED.test(form) && isCountable(flavour)) ||
    POURED.some(([of, kind]) => of.test(flavour) && kind.test(form) && kind.test(second));
  return isForm ? `${flavour} ${second}` : undefined;
}

/** "fresh lime juice" as the flavour "lime" and the form "juice"; "simple syrup" has no flavour. */
function parted(name: string): { flavour: string | undefined; form: string } {
  const words = name.trim().split(" ");
  const form = words.at(-1) ?? "";
  const flavour = words
    .slice(0, -1)
    .join(" ")
    .replace(/^fresh(?:ly)?(?:[\s-]+(?:squeezed|pressed))?\s+/i, "");
  const isFlavour = !isBareDescription(flavour) || isCountable(flavour) || FLAVOUR.test(flavour);
  return { flavour: flavour !== "" && isFlavour ? flavour : undefined, form };
}
