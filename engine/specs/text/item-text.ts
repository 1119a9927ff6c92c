import { isRemark, namesDrink, splitAlternatives, splitStrokes } from "#engine/specs/text/alternatives.ts";
import { isBareDescription, isFruitAlone } from "#engine/specs/text/descriptions.ts";
import { RefusedLine } from "#engine/specs/text/entry.ts";
import { readUnit } from "#engine/specs/text/measure-words.ts";
import { isCountable, isPlural, isUsuallyOne, pieceItem, singular } from "#engine/specs/text/piece-words.ts";
import { quantityIn } from "#engine/specs/text/quantity.ts";

/** What stands after the amount: the item's name, what may stand in for it, and remarks. */
export type ItemText = { name: string; orItems: string[]; notes: string[] };

/** Remarks that people write behind a name without a comma. */
const TRAILING =
  /\s+((?:for|as)\s+(?:an?\s+|the\s+)?(?:garnish(?:ing)?|serving|rinsing|rinse|muddling|finishing|floating|float|topping|rim(?:ming)?|decoration)\b.*|(?:or\s+)?to\s+\p{L}.*|garnish|rinse|float|optional|freshly\s+(?:squeezed|pressed|juiced|grated|ground|cracked)|at room temperature|in\s+(?:brine|syrup|oil|vinegar|juice|alcohol|liqueur)|of\s+(?:your\s+)?(?:own\s+)?(?:choice|choosing)\b.*|plus (?:more|extra)\b.*|for\s+\p{L}.*|such as\b.*|like\s.*|recipe\s+(?:follows|below|above|here)\b.*|preferably\b.*|ideally\b.*|e\.g\..*|i\.e\..*|see\s+(?:note|recipe)\b.*|cut\s+in(?:to)?\s+(?:about\s+)?(?:\d[\d\s/-]*(?:(?:or|to)\s+\d+)?)?[^\d]*|if\s+(?:desired|available|needed|you)\b.*|(?:instead|in\s+place)\s+of\b.*|to\s+(?:your\s+)?taste|(?:(?:very\s+)?(?:fresh(?:ly)?|finely|thinly|thickly|roughly|coarsely|lightly|gently|well)\s+)?(?:juiced|sliced|quartered|halved|muddled|expressed|flamed|chilled|strained|diced|chopped|peeled|cubed|minced|deseeded|hulled|pitted|torn|bruised|slapped|smashed|crushed|(?:crushed|broken|snapped|split|torn|cracked|cut|sliced|chopped|halved)\s+(?:in|into|up|lengthwise|lengthways|crosswise)\b[^\d]*|(?<!\bor\b.*\s)squeezed|beaten|separated|washed|scrubbed|seeded|stemmed|cored|trimmed|zested|drained|divided|reserved|softened|melted|warmed|cooled|whipped)(?:\s+(?:very\s+)?(?:thin(?:ly)?|thick(?:ly)?|fine(?:ly)?|roughly|coarsely|lengthwise|lengthways|crosswise|well))?|(?:soaked|dipped|rolled|studded|stuffed|dusted|sprinkled|skewered|wrapped|doused|saturated)\s+(?:in|with|on)\b.*|from\s+(?:\d|one\b|half\b|an?\b|the\b|\p{Lu}).*|full\s+of\s.*|(?:poured|layered|floated)\b.*|on\s+an?\s+(?:pick|skewer|stick)\b.*|\(optional\))$/iu;

/** What a remark behind a thing without an amount begins with; any other word there is a thing of its own. */
const SURE_REMARK =
  /^(?:or|and|plus|for|to|on|in|at|as|if|with|without|from|over|of|not|the|no|about|like|such|see|use|using|my|your|we|i|it|any|just|optional(?:ly)?|preferably|ideally|garnish|rim|float|rinse|muddle|adds?|fresh|dried|cut|peeled|more|extra|thin|thick|long|large|small|wide|whole|\(.*|\d.*|\p{L}+(?:ly|ed|en)(?=$|[\s,]+(?:and|or|in|into|on|onto|to|with|from|over|off|at|for|by|as|up|until|before|thin|lengthwise|lengthways|crosswise|\p{L}+(?:ly|ed|en))(?!\p{L}))|\p{L}+-\p{L}+)(?![\p{L}-])/iu;

/** "white, granulated sugar": behind these words alone no name is complete. */
const SIZE_OR_COLOUR =
  /^(?:of\s+)?(?:(?:white|light|dark|gold|golden|black|red|fresh|frozen|dried|raw|dry|ripe|large|small|medium|thin|thick|cold|hot|soft|unsweetened|whole|good)\s?)+$/i;

/** Refuses "lime wedge, mint": in a list of garnishes, what stands behind the comma is a second one. */
export function requireRemarks(notes: readonly string[]): void {
  const parts = notes
    .flatMap((note) => note.replace(/\([^()]*\)/g, "").split(/[,;]/))
    .map((part) => part.trim());
  const thing = parts.find((part) => part !== "" && !SURE_REMARK.test(part));
  if (thing === undefined) return;
  throw new RefusedLine(`"${thing}" may be a second item: write one item on a line, with its amount.`);
}

/** How a remark may begin that could pass for a name in a list. */
const REMARK_WORD =
  /^(?:optional|fresh|bottled|chilled|strained|pasteuri[sz]ed|preferably|to taste|more|less|other|similar|such|any|as|if|see|peeled|cut|dried|sweetened|unsweetened)\b/i;

/** A name, its alternatives and the remarks on it from the text that follows an amount. */
export function readItemText(text: string): ItemText {
  const { plain, inside } = withoutBrackets(
    withJuiceNamed(text.replace(/\s\+\s*(?=extra|more)/i, ", plus ")),
  );
  for (const bracket of inside) if (/^(?:plus|and|&|\+)\s/i.test(bracket)) requireRemark(bracket);
  const { first, more } = splitSentences(plain);
  const { head, notes } = splitNotes(first);
  const { name, trailing } = splitTrailing(tidy(head));
  requireNoAction(name);
  const { thing, states } = withoutStates(name);
  const { item, orItems, remark } = splitAlternatives(thing);
  const extra = [...inside, ...notes, ...more].map((note) => eachOf(asAlternative(note)));
  requireOneMeasure(item);
  return {
    name: item,
    orItems: [...orItems, ...extra.flatMap(({ names }) => names)].map((other) => withJuice(other, item)),
    notes: [states, ...trailing, remark, ...extra.flatMap((each) => each.notes)].filter(
      (note) => note !== null,
    ),
  };
}

/** The names in "rye or whiskey", "rye/whiskey", and the remarks with them. */
function eachOf({ orItem, note }: { orItem?: string; note: string | null }) {
  if (orItem === undefined) return { names: [], notes: [note] };
  const { item, orItems, remark } = splitAlternatives(orItem);
  return { names: [item, ...orItems].flatMap((name) => splitStrokes(name)), notes: [note, remark] };
}

/** "fresh juice from 2 limes" → "fresh lime juice, from 2 limes": the fruit belongs to the name. */
function withJuiceNamed(text: string): string {
  const found =
    /^(.*?\bjuice)\s+(from\s+(?:about\s+)?[\d/.\s-]+(?:to\s+\d+\s+)?(?:large\s+|small\s+|medium\s+)?(\p{L}+))\b/iu.exec(
      text,
    );
  if (
    found === null ||
    !/^\s*(?:of\s+)?(?:fresh(?:ly)?(?:[\s-]+squeezed)?\s+|strained\s+)*juice$/i.test(found[1] ?? "")
  )
    return text;
  const fruit = singular((found[3] ?? "").toLowerCase());
  return `${(found[1] ?? "").replace(/juice$/i, `${fruit} juice`)}, ${found[2]}${text.slice(found[0].length)}`;
}

/** "hot water and stir gently" is a step, not a name. */
function requireNoAction(name: string): void {
  if (/[•▪·●]/.test(name))
    throw new RefusedLine(`"${name}" holds more than one entry: write each on a line.`);
  const action =
    /\b(?:and|then)\s+(?:stir|shake|strain|serve|mix|muddle|pour|garnish|top|add|fill|swirl)\b.*/i.exec(name);
  if (action !== null) throw new RefusedLine(`"${action[0]}" is not part of an item's name: leave it out.`);
}

function withoutBrackets(text: string): { plain: string; inside: string[] } {
  const inside: string[] = [];
  const plain = withoutNesting(text).replace(
    /\(([^()]*)\)|\[([^[\]]*)\]/g,
    (_, round?: string, square?: string) => {
      const content = (round ?? square ?? "").trim();
      if (content !== "" && !/^\d+$/.test(content)) inside.push(content);
      return " ";
    },
  );
  if (/[()[\]]/.test(plain))
    throw new RefusedLine(`A bracket is not closed in "${text.trim()}": close it or leave it out.`);
  return {
    plain: plain
      .replace(/\s+/g, " ")
      .replace(/\s+([,;.])(?!\d)/g, "$1")
      .trim(),
    inside,
  };
}

/** "(a (b) c)" and "((a))" as one bracket. */
function withoutNesting(text: string): string {
  const flat = text.replace(/(\([^()]*)\(([^()]*)\)/g, "$1 $2 ");
  return flat === text ? text : withoutNesting(flat);
}

/** "rum. Any light one will do": a sentence behind the name is a remark; "St. Somebody" ends none. */
function splitSentences(text: string): { first: string; more: string[] } {
  const found =
    /(?<=\p{Ll}{3}|\))(?<!\b(?:Mrs|Prof|Capt|Col|Gen|Bros|Dist|Est|Ltd|Inc|Cie|Rev|approx))\.\s+(?=\p{Lu})/u.exec(
      text,
    );
  if (found === null) return { first: text, more: [] };
  const sentence = text.slice(found.index + found[0].length).replace(/\.$/, "");
  requireRemark(sentence);
  return { first: text.slice(0, found.index), more: [sentence] };
}

function splitNotes(text: string): { head: string; notes: string[] } {
  const cut = /\s*(?:[,;]\s*|\s-\s|\s-(?=\p{L})|(?<=\p{L}{3})-\s|:\s)/u.exec(
    text.replace(/^[\s,;:.-]+/, (lead) => " ".repeat(lead.length)),
  );
  if (cut === null) return { head: text, notes: [] };
  const head = text.slice(0, cut.index);
  const note = text.slice(cut.index + cut[0].length).trim();
  if (SIZE_OR_COLOUR.test(head) && cut[0].includes(",") && !SURE_REMARK.test(note) && !isRemark(note))
    return splitNotes(`${head} ${note}`);
  const [listed = "", ...said] = note.split(/\s+-\s+/);
  const [, state, other = ""] = /^((?:\p{Ll}+ly\s+)?\p{Ll}+ed),\s+or\s+(.+)$/u.exec(listed) ?? [];
  // "honey, warmed, or maple syrup": how the first comes, and a second.
  if (state !== undefined && !isRemark(other))
    return { head: `${head} or ${other}`, notes: [state, ...said] };
  // Behind a dash a person says something about the thing: "wine - choose a dry one, or cider".
  if (/^\s*-/.test(cut[0])) {
    requireRemark(note);
    return { head, notes: [note] };
  }
  const isList = (isListOfItems(listed) && !isOfMakes(head, listed)) || isListOfDrinks(head, listed);
  if (!cut[0].includes(":") && isList) {
    return { head: `${head} or ${listed.replace(/,\s*(?:or\s+)?/gi, " or ")}`, notes: said };
  }
  if (!cut[0].includes(":") && mayListItems(head, note)) {
    throw new RefusedLine(`"${text.trim()}" lists several items: join their full names by "or".`);
  }
  requireRemark(note);
  return { head, notes: note === "" ? [] : [note] };
}

/** "A, B or C" names three items; "lime juice, fresh or bottled" names one. */
function isListOfItems(note: string): boolean {
  const names = note.split(/,\s*(?:or\s+)?|\s+or\s+/i);
  const isOxford = /,\s*or\s/i.test(note);
  const isNamed = (name: string) =>
    (isOxford || /^(?:an?\s+)?\p{Lu}/u.test(name.trim())) && !REMARK_WORD.test(name.trim());
  return /\bor\s/i.test(note) && !/^or\b/i.test(note) && names.every(isNamed);
}

/** "Cola, Lemonade or soda, chilled": neither a list of whole names nor a remark; brands of a kind ("gin, Oaks or Ash") are one. */
function mayListItems(head: string, note: string): boolean {
  if (/^(?:with|plus|for|to|cut|as|in|on)\b/i.test(note)) return false;
  const added = /,\s*or\s+(.*)$/i.exec(note)?.[1];
  if (added !== undefined && isRemark(added)) return false;
  if (added !== undefined || (/\sor\s/i.test(note) && isBareDescription(head))) return true;
  const named = /^([^,]+?)\s+or\s+([^,]+)/i.exec(note);
  if (named === null || REMARK_WORD.test(note)) return false;
  const [, one = "", other = ""] = named;
  if (endsList(head, one, other)) return true;
  return !isRemark(other) && /^[\p{Lu}\d]/u.test(head) && /^\p{Lu}/u.test(one) && !isBareDescription(other);
}

/** "coconut, rapeseed or vegetable oil": the last of three lends its noun to all; "milk, oat or soy milk" says which milk. */
function endsList(head: string, one: string, other: string): boolean {
  const words = other.split(" ");
  const isPlain = /^\p{Ll}[\p{L}\s-]*$/u.test(one) && /^\p{Ll}[\p{L}\s-]*$/u.test(other);
  const isState = (text: string) => /(?:(?<!se)ed|en|made|bought)$/.test(text) || isBareDescription(text);
  return (
    isPlain &&
    words.length > 1 &&
    !isRemark(other) &&
    !isState(one) &&
    !isState(other) &&
    words.at(-1) !== head.split(" ").at(-1)
  );
}

/** "gin, Oaks or Ash" names two makes of gin, where the list of things would go on in small letters. */
function isOfMakes(head: string, note: string): boolean {
  return /^\p{Ll}/u.test(head) && namesDrink(head) && !/,\s*or\s/i.test(note);
}

/** "gin, bourbon or vodka"; in small letters the first and the last make it a list: "champagne, crémant or cava". */
function isListOfDrinks(head: string, note: string): boolean {
  if (!/\sor\s/i.test(note)) return false;
  const names = note.split(/,\s*(?:or\s+)?|\s+or\s+/i);
  if (names.length < 2) return false;
  if (names.every((name) => namesDrink(name))) return true;
  const last = names.at(-1) ?? "";
  const isPlain = names.every((name) => /^\p{Ll}[\p{L}\s-]*$/u.test(name) && !isBareDescription(name));
  const isOther = last.split(" ").at(-1) !== head.split(" ").at(-1);
  return isPlain && isOther && namesDrink(head) && namesDrink(last) && !REMARK_WORD.test(note);
}

/** "plus 1 lime wheel" is a second thing, not a remark on the first; "plus a sprig for garnish" may stay. */
function requireRemark(note: string): void {
  const joined = /^(?:plus|and|&|\+|with)\s+(.*)$/i.exec(note);
  const rest = joined?.[1] ?? note;
  const parts = rest.split(/,|;|\s(?:and|or|&)\s/i).map((part) => part.trim());
  if (parts.length > 1 && joined === null && parts.some((part) => isSeveral(part))) {
    throw new RefusedLine(`"${note}" names more items: write one item on a line.`);
  }
  if (/\b(?:garnish|more|extra|taste|serving|serve)\b/i.test(rest)) return;
  if (joined !== null && /^(?:the\s+)?(?:juice|zest|peel)s?\s+of\b/i.test(rest)) {
    throw new RefusedLine(`"${note}" is a second item: write one item on a line.`);
  }
  if (parts.some((part) => isSecondPiece(part))) {
    throw new RefusedLine(`"${note}" is a second item: write one item on a line.`);
  }
  const quantity = quantityIn(rest);
  if (quantity === undefined) return;
  const unit = readUnit(quantity.rest);
  // "plus 1 tbsp for dusting" is more of the same.
  if (unit !== undefined && /^\s*(?:for|to|as|if)\b/i.test(unit.rest)) return;
  const isMeasure = unit !== undefined || pieceItem(quantity.rest) !== undefined;
  if (joined === null && !isMeasure) return;
  throw new RefusedLine(`"${note}" is a second measure: write one item on a line.`);
}

/** "olives" or "coffee beans" in a list is a thing of its own. */
function isSeveral(text: string): boolean {
  return /^(?:\p{L}+\s)?\p{L}+$/u.test(text) && isPlural(text) && isCountable(text);
}

function isSecondPiece(text: string): boolean {
  if (
    /\d|\bin(?:to)?\s+(?:half|halves|quarters|two|pieces)\b|^half\s+\p{L}+ed\b|^(?:cut|in|as|from|for|with|without|including|sliced|diced|preferably|ideally|such|like|about)\b|\b(?:cut|split|into|only|removed|discarded|reserved|attached|left on)\b|\p{L}ed$/iu.test(
      text,
    )
  )
    return false;
  return pieceItem(text) !== undefined || isUsuallyOne(text) || /\brim$/i.test(text);
}

function splitTrailing(text: string): { name: string; trailing: string[] } {
  const found = text.includes(" ") ? TRAILING.exec(text) : null;
  if (found === null) return { name: text, trailing: [] };
  const before = splitTrailing(tidy(text.slice(0, found.index)));
  return { name: before.name, trailing: [...before.trailing, (found[1] ?? "").replace(/[()]/g, "")] };
}

/** "or vodka" in a remark names another item; "or to taste" stays a remark. */
function asAlternative(note: string): { orItem?: string; note: string | null } {
  const { name, trailing } = splitTrailing(tidy(/^or\s+(?:an?\s+)?(.+?)[!.]*$/i.exec(note)?.[1] ?? ""));
  const isName =
    name !== "" &&
    !/[\d,;]|^\p{Ll}+ed$|\b(?:cut|ground|made|bought|powdered)$/u.test(name) &&
    (!isBareDescription(name) || isFruitAlone(name)) &&
    name.split(" ").length <= 4 &&
    !isRemark(name);
  return isName ? { orItem: name, note: trailing.length === 0 ? null : trailing.join(", ") } : { note };
}

/** "lemon juice (or lime)" means lime juice. */
function withJuice(other: string, item: string): string {
  return /\bjuice$/i.test(item) && isFruitAlone(other) ? `${other} ${item.split(" ").at(-1)}` : other;
}

/** A second "2 oz" inside a name means that two lines have become one. */
function requireOneMeasure(name: string): void {
  if (!/\d/.test(name)) return;
  const piece = /\s\d[\d/]*\s+(.+)$/.exec(name)?.[1];
  if (piece !== undefined && pieceItem(piece) !== undefined) {
    throw new RefusedLine(`"${piece}" in "${name}" is a second item: write one item on a line.`);
  }
  for (const found of name.matchAll(/(?<![\d./:-]|\bno\.?\s)(?:\d+(?:[./,]\d+)?|\.\d+)\s?[A-Za-z.]+/gi)) {
    const quantity = quantityIn(found[0]);
    const unit = quantity === undefined ? undefined : readUnit(quantity.rest);
    if (unit !== undefined) {
      throw new RefusedLine(`"${found[0]}" is a second measure: write one item on a line.`);
    }
  }
}

/** "strawberries, fresh or frozen" is written without the comma, too: how a thing may come is no second thing. */
function withoutStates(text: string): { thing: string; states: string | null } {
  if (!text.includes(" or ")) return { thing: text, states: null };
  const found =
    /^(.*\p{L})\s+((?:fresh|frozen|thawed|canned|bottled|dried|hot|cold|chilled|warm|raw|whole|ground)\s+or\s+(?:fresh|frozen|thawed|canned|bottled|dried|hot|cold|chilled|warm|raw|whole|ground))$/iu.exec(
      text,
    );
  if (found === null || isBareDescription(found[1] ?? "")) return { thing: text, states: null };
  return { thing: found[1] ?? "", states: found[2] ?? null };
}

function tidy(text: string): string {
  return text
    .replace(/^[\s,;:.\-–&+/]+/, "")
    .replace(/^of\s+(?:the\s+|an?\s+|your\s+)?/i, "")
    .replace(/^of(?=\p{Lu}\p{Ll})/u, "")
    .replace(/^(?:de\s+|d')(?=\p{L})/u, "")
    .replace(/^(?:your\s+)?(?:own|favou?rite|preferred|chosen|choice\s+of)\s+(?=\p{L})/iu, "")
    .replace(/\s+(?:or|and)$/i, "")
    .replace(/[\s,;:\-–/+*]+$/, "")
    .replace(/(?<=\p{L}{3})\.$/u, "")
    .trim();
}
