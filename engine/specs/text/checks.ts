import { type Reading, RefusedLine } from "#engine/specs/text/entry.ts";
import { isCountable, isPlural } from "#engine/specs/text/piece-words.ts";

/** Refuses a line of which nothing with a letter in it is left to be an item. */
export function requireName(name: string, text: string, understood: Partial<Reading> = {}): void {
  if (/^(?:or|and|per|plus|with|from|into)\s/i.test(name)) {
    throw new RefusedLine(
      `"${name}" does not begin with an item's name: write the item right after the amount.`,
      understood,
    );
  }
  if (
    /\b(?:glass(?:es)?|jug|pitcher|shaker|mug|flute|tumbler|strainer|muddler|coupe|goblet|decanter|jars?|bowls?|saucepans?)$/i.test(
      name,
    )
  ) {
    throw new RefusedLine(`"${name}" is a vessel or a tool: leave the line out.`, understood);
  }
  if (name.includes("|")) {
    throw new RefusedLine(
      `"|" in "${name}" is not understood: write the amount and the item's name.`,
      understood,
    );
  }
  if (/\p{L}/u.test(name)) return;
  throw new RefusedLine(`No item is named behind "${text.trim()}": write it after the amount.`, understood);
}

/** Prose: no label is written with these words in small letters. */
const PROSE =
  /(?:^|\s)(?:is|are|was|were|be|will|would|can|could|should|may|must|do|does|i|we|you|they|it|this|that|these|those|until|than|which|because|when|while|not|so|too|also|please|enough|into|onto|over|each|per|about|if|has|have|had|use|using|your|my|our|some|any|there|what|where|how|I)(?=\s|$)/u;

/** Two words of a name at most may be in figures besides an age, a strength or a ratio: "Nine Oaks 43 rum". */
const NUMBER_IN_NAME =
  /(?<=\s)\d+(?:[./]\d+)?\s+(?!(?:years?|yrs?|stars?|proof|percent|parts?)\b)(\p{L}.*)$/iu;

/** Measures and containers that no item is called after: they belong to an amount that was not understood. */
const MEASURE_IN_NAME =
  /(?:^|\s)(?:shots?|jiggers?|ounces?|oz|ml|cl|teaspoons?|tablespoons?|tsps?|tbsps?|cups|handfuls?|pinch(?:es)?|bunch(?:es)?|measures|parts?|bottles?|cans|cartons?|packets?|bags?(?=\s))(?=\s|$)/iu;

/** Nothing but how a thing is: "white", "100% pure", "fresh large". */
const ONLY_DESCRIBES =
  /^(?:(?:white|gold|silver|light|dark|golden|black|red|fresh|freshly|frozen|dried|raw|dry|ripe|large|small|medium|thin|thick|cold|hot|chilled|unsweetened|whole|good|quality|pure|organic|natural|\d+\s?%)\s?)+$/i;

/** No label is longer than this in words. */
const NAME_WORDS_MAX = 8;

/**
 * Refuses a name with a word in it that nothing explains: what is left over could be an amount, a second item or a step.
 *
 * "rum 2 limes" and "gin you have at home" are refused; "Nine Oaks 43 rum" and "12-year-old rye" are names.
 */
export function requireExplained(name: string): void {
  const prose = PROSE.exec(name);
  if (prose !== null) refuseWord(prose[0].trim(), name);
  const dangling =
    /(?:^|\s)(?:of|with|for|to|in|from|at|by|on|the|an?|plus|without|as|like|such|very|freshly|finely|thinly|roughly|lightly|coarsely)$/i.exec(
      name,
    );
  if (dangling !== null) refuseWord(dangling[0].trim(), name);
  const glued =
    /^(?:(?:oz|ml|cl|tsp|tbsp|cups?|dash|g)\d\S*|(?:piece|whole|ounce|barspoon|teaspoon|tablespoon)(?!s?\b|ful|some|meal|grain|wheat)\p{L}+|(?:slices|wedges|leaves|sprigs|pieces|dashes|drops|cups)(?=\p{L})\S+)/iu.exec(
      name,
    );
  if (glued !== null) refuseWord(glued[0], name);
  const origin = /(?:^|\s)from(?=\s)(?!\s+concentrate\b)/i.exec(name);
  if (origin !== null) refuseWord(origin[0].trim(), name);
  if (name.split(" ").length > NAME_WORDS_MAX) {
    throw new RefusedLine(`"${name}" is too long for an item's name: put remarks behind a comma.`);
  }
  const article = /^(?:the|an?)(?=\s)/.exec(name);
  if (article !== null) refuseWord(article[0], name);
  const measure = MEASURE_IN_NAME.exec(name);
  if (measure !== null) refuseWord(measure[0].trim(), name);
  if (ONLY_DESCRIBES.test(name)) {
    throw new RefusedLine(`"${name}" says how a thing is, not what it is: write the item's name.`);
  }
  const second = NUMBER_IN_NAME.exec(name)?.[1];
  if (second !== undefined && (isPlural(second) || isCountable(second))) refuseWord(second, name);
}

function refuseWord(word: string, name: string): never {
  throw new RefusedLine(
    `"${word}" in "${name}" is not understood: write only the item's name after the amount.`,
  );
}

/** "peeled and sliced orange" is one orange: two participles describe the thing that follows them. */
function withoutJoinedStates(name: string): string {
  return name.replace(/(?<=\p{L}ed)\s(?:and|&)\s(?=(?:\p{Ll}+ly\s)?\p{Ll}+ed\s\p{L})/gu, " ");
}

/** Refuses "lime wheel and mint sprig": two items, and one line can hold one. */
export function requireOneThing(name: string): void {
  const joint = /\s(and|&|\+|with|plus)\s/i.exec(withoutJoinedStates(name));
  if (joint === null) return;
  throw new RefusedLine(`"${joint[1]}" joins two items in "${name}": write one item on a line.`);
}

/** What may be made of two things and still be one item: "ginger and lime syrup". */
const COMPOUND =
  /\b(?:syrup|mix|cordial|liqueur|tea|soda|shrub|puree|purée|tincture|infusion|lemonade|orgeat|gin|vodka|rum|whisky|whiskey|bourbon|tequila|mezcal|brandy|cognac|schnapps|kombucha|tonic|foam|marmalade|jam|half|seltzer|oleo|saccharum|blend|drink|cider|mead)$/i;

/** Refuses "lemon juice and syrup", where a measure holds two items; "ginger and lime syrup" and "Oak & Ash rum" are one. */
export function requireOnePoured(name: string): void {
  const joint = /^(.*?)\s(and|&|plus|\+)\s(.*)$/i.exec(withoutJoinedStates(name));
  if (joint === null) return;
  const [, before = "", word = "", behind = ""] = joint;
  const isBrand = word === "&" && /\p{Lu}\S*$/u.test(before) && /^\p{Lu}/u.test(behind);
  const isSeasoning = /\b(?:salt|pepper|ice)\b/i.test(name);
  const isTwice = /\b(?:juice|syrup|liqueur|bitters|vermouth|sugar|wine)$/i.test(before);
  if (!isTwice && !isSeasoning && (isBrand || COMPOUND.test(name))) return;
  throw new RefusedLine(`"${word}" joins two items in "${name}": write one item on a line.`);
}

/** Refuses a measure that no venue can reckon with. */
export function refuseMeasure(written: string, understood: Partial<Reading> = {}): never {
  const isUncounted = /\b(?:few|some|several|lots?|etwas|einige|paar|mehrere|wenig|viel|reichlich)$/i.test(
    written,
  );
  const instead = isUncounted
    ? "how many? Write a number."
    : "write oz, ml, cl, dash, barspoon, g … or a number of pieces.";
  throw new RefusedLine(`"${written}" is not a measure that can be reckoned with: ${instead}`, understood);
}

/** Remarks in the order in which they were written, or null. */
export function joinNotes(notes: readonly (string | null)[]): string | null {
  const said = notes.filter((note) => note !== null && note !== "");
  return said.length === 0 ? null : said.join(", ");
}
