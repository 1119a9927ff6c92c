import { isBareDescription, isDescription, isFruit } from "#engine/specs/text/descriptions.ts";
import { bareForm, isSameThing } from "#engine/specs/text/forms.ts";
import { isCountable, pieceItem, pieceWord } from "#engine/specs/text/piece-words.ts";

/** What a bare description may lend itself from a name that begins otherwise: "white or Puerto Rican rum". */
const NOUNS = new Set(
  (
    "rum gin vodka tequila mezcal whiskey whisky bourbon brandy spirit vermouth wine juice syrup liqueur bitters " +
    "nectar puree purée cordial shrub sherry port rye scotch cognac cachaça cachaca pisco armagnac calvados applejack aquavit champagne prosecco cava beer lager soda"
  ).split(" "),
);

/** "or other cherry liqueur", "or to taste": no second item but a remark. */
const REMARK =
  /^(?:[\d.]+(?:k?g|[mcd]?l|oz)?|half\b(?![\s-](?:and|&|n)[\s-]half)|one\b|(?:a\s+)?(?:few|couple)\b|use|try|substitute|with|just|none|omit|leave|skip|see|about|other|to\b|additional|another|similar|any|equivalent|to taste|more|less|so|both|neither|as|your|whatever|something|the like|if)\b/i;

const OR = /,?\s+or\s+(?:an?\s+)?|\s*,\s*or\s+/i;
const STROKE = /\s*\/\s+|\s+\/\s*|(?<=\p{L}{3})\/(?=\p{L}{3}|\d-?\p{L}{2})/iu;
/** "lemon/lime syrup" and "b/w" have a stroke within one name. */
const WITHIN_NAME =
  /\p{L}\/\p{L}.*\b(?:infused|syrup|cordial|mix|blend|shrub|purée|puree|soda|bitters|tea|foam|solution|powder|extract|concentrate|reduction)\b|\b(?:w|b|s)\/\w/iu;

/** Whether what follows an "or" is a remark ("to taste", "similar") and no second item. */
export function isRemark(text: string): boolean {
  return REMARK.test(text);
}

/** "vodka/rum" as two names; "lemon/lime syrup" and "allspice dram/liqueur", two words for one thing, as one. */
export function splitStrokes(name: string): string[] {
  const parts = name.split(STROKE);
  if (parts.length === 1) return parts;
  const isOneThing = parts.slice(1).every((part) => isSameThing(parts[0] ?? "", part));
  return isOneThing || WITHIN_NAME.test(name) ? [name] : parts;
}

export type Alternatives = { item: string; orItems: string[]; remark: string | null };

/**
 * An "either of" split into its default and what may stand in for it.
 *
 * "rested or aged agave spirit" → "rested agave spirit", or "aged agave spirit"; "rye or bourbon" → "rye", or
 * "bourbon"; "pear brandy or liqueur" → "pear brandy", or "pear liqueur"; "cherry liqueur or similar" → "cherry
 * liqueur" with the remark "or similar".
 */
export function splitAlternatives(text: string): Alternatives {
  const parts = text
    .split(OR)
    .flatMap((part) => splitStrokes(part))
    .map((part) => part.trim());
  const remarkAt = parts.findIndex((part, at) => at > 0 && isRemark(part));
  const names = parts.slice(0, remarkAt === -1 ? undefined : remarkAt).filter((part) => part !== "");
  const remark = remarkAt === -1 ? null : `or ${parts.slice(remarkAt).join(" or ")}`;
  const last = names.at(-1) ?? "";
  const [item = "", ...orItems] = names.map((name, at) =>
    at === names.length - 1 ? name : completed(name, last),
  );
  return { item, orItems: orItems.map((name) => withFruit(bareForm(name, item) ?? name, item)), remark };
}

/** "lemon twist or wedge" means a lemon wedge. */
function withFruit(name: string, first: string): string {
  if (pieceWord(name) === undefined || pieceItem(first) === undefined) return name;
  return `${first.split(" ").slice(0, -1).join(" ")} ${name}`;
}

/** Whether a text ends in the name of a kind of drink: "blended Scotch", not "chilled". */
export function namesDrink(text: string): boolean {
  return NOUNS.has((text.trim().split(" ").at(-1) ?? "").toLowerCase());
}

/** What is made of a fruit that is counted whole: "nectarine or peach juice" is of either. */
const PRESSED = /\s(?:juice|nectar|pur[eé]e|syrup|cordial|liqueur|bitters|shrub)$/i;

/** What vinegar is made of: "dry cider or white wine vinegar" is vinegar of either. */
const SOURED = /\b(?:cider|wine|rice|malt|sherry|champagne|balsamic|apple)$/i;

/** A bare description completed with the noun of the last alternative: "rested" of "aged agave spirit". */
function completed(name: string, last: string): string {
  if (/\bvinegar$/i.test(last) && SOURED.test(name)) return `${name} ${last.split(" ").at(-1)}`;
  const isPressed = !name.includes(" ") && isCountable(name) && PRESSED.test(last);
  const isBare = isBareDescription(name) || isPressed;
  const noun = nounOf(last.split(" "), isFruit(name) || isPressed);
  // A cherry is a garnish of its own; there is no cherry peel.
  const isBerry = /(?:berry|cherry)$/i.test(name) && /^(?:peel|twist|wedge|zest|wheel|slice)s?$/i.test(noun);
  return isBare && !isBerry && noun !== "" ? `${name} ${noun}` : name;
}

/** What is left of a name without its first description: "extra dry vermouth" → "vermouth"; a fruit is lent a drink's name alone. */
function nounOf([first = "", ...rest]: readonly string[], isLentToFruit: boolean): string {
  if (/^(?:extra|semi|very)$/i.test(first)) return nounOf(rest, isLentToFruit);
  if (isDescription(first)) return rest.join(" ");
  const noun = rest.at(-1) ?? "";
  return !isLentToFruit || NOUNS.has(noun.toLowerCase()) ? noun : "";
}
