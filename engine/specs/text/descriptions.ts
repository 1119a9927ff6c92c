/** Fruits lend their name to a juice or a cut, and are things of their own. */
const FRUITS =
  "orange lemon lime grapefruit pineapple apple cranberry cherry raspberry strawberry blackberry peach pear mandarin tangerine";

/** Words that only describe: before "or" they need the noun that follows the second description. */
const DESCRIPTIONS = new Set(
  (
    `${FRUITS} ` +
    "spring mineral tap boiling iced decaf oat soy white light dark gold golden amber black red green blue yellow pink clear aged rested young old unaged overproof bonded " +
    "blanco silver reposado añejo anejo joven dry sweet bianco blanc rosso extra london navy strong spiced raw brown fine " +
    "superfine simple rich plain still sparkling fresh bottled canned hot cold iced aromatic ruby tawny fino " +
    "amontillado manzanilla oloroso jamaican cuban barbados irish canadian japanese american scottish demerara turbinado " +
    "crushed cracked cubed pebble frozen dried thawed freshly ripe large small muscovado cane maple agave straight blended single malt english french italian spanish heavy whole"
  ).split(" "),
);

/** Descriptions of two words, neither of which describes alone. */
const TWO_WORDS =
  /\b(?:(?:pot|column|coffey) still|small batch|single (?:barrel|cask|estate)|(?:barrel|cask|high|full|navy) (?:proof|strength)|old tom)\b/gi;

/** Whether a name only describes, as "white" or "fresh lime" do: the noun is still to come. */
export function isBareDescription(name: string): boolean {
  return name
    .replace(TWO_WORDS, "aged")
    .split(" ")
    .every((word) => isDescription(word));
}

/** Whether a name is that of a fruit and no more. */
export function isFruitAlone(name: string): boolean {
  return !name.includes(" ") && isFruit(name);
}

/** Whether a name ends in a fruit: "fresh lime". */
export function isFruit(name: string): boolean {
  return FRUITS.split(" ").includes((name.split(" ").at(-1) ?? "").toLowerCase());
}

/** Whether a single word only says how a thing is: "white", "brandied". */
export function isDescription(word: string): boolean {
  return (
    DESCRIPTIONS.has(word.toLowerCase()) ||
    /-(?:style|proof|year|grain|fat|free|aged|strength|purpose|quality|infused|sized?)$/i.test(word) ||
    // "brandied", "blanched", "smoked": a participle is no thing by itself; "seed" is none.
    /^\p{L}\p{Ll}+[^e\P{L}]ed$/u.test(word)
  );
}
