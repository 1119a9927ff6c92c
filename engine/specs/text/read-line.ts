import {
  joinNotes,
  refuseMeasure,
  requireExplained,
  requireName,
  requireOneThing,
} from "#engine/specs/text/checks.ts";
import { type Reading, RefusedLine } from "#engine/specs/text/entry.ts";
import { readItemFirst } from "#engine/specs/text/item-first.ts";
import { readItemText, requireRemarks } from "#engine/specs/text/item-text.ts";
import {
  isHouseMeasure,
  readQualifiers,
  readUnit,
  type UnitFound,
  vagueMeasure,
} from "#engine/specs/text/measure-words.ts";
import { isUsuallyOne, namesSeveral, pieceItem, pieceOfOther } from "#engine/specs/text/piece-words.ts";
import { type Quantity, readQuantity } from "#engine/specs/text/quantity.ts";
import { pieceOrName, readAfterQuantity, readVague } from "#engine/specs/text/read-amount.ts";
import { readTop } from "#engine/specs/text/read-top.ts";

const GARNISH =
  /^(?:to\s+|for\s+(?:the\s+)?|optional\s+)?garnish(?:ed|es|ing)?(?:\s*[:-]\s*|\s+)(?:with\s+)?|^decorate\s+with\s+/i;
const APPROXIMATELY =
  /^(?:about|approx(?:imately)?\.?|ca?\.|circa|around|roughly|~|≈)\s*(?=[\d.]|an?\b|one\b|half\b)/i;
const FLOAT = /^float(?:ed)?\s*(?:of|with|:)?\s*(?=\d)/i;
const PART = "juice|zests?|peels?|rind|pulp|flesh|seeds?|skin";
const PART_OF = new RegExp(
  `^(?:the\\s+)?(?:freshly\\s+squeezed\\s+|fresh\\s+|strained\\s+|(?:finely\\s+)?grated\\s+|pared\\s+)?((?:${PART})(?:\\s+(?:and|&)\\s+(?:${PART}))?|\\p{L}+\\s+(?:peel|zest|rind)(?=\\s+(?:of|from)\\s+(?:\\d|one\\b|half\\b|an?\\b)))(?:\\s+(?:of|from)\\s+(?:the\\s+)?|\\s+(?=\\d|half\\b))`,
  "iu",
);
/** "white of one egg" */
const EGG_PART = /^(?:the\s+)?(white|yolk)s?\s+(?:of|from)\s+(.*?)\s*eggs?\b\.?(.*)$/i;
const LABEL = /^(\p{L}[\p{L}\s]{0,24}):\s*(?=[\d.]|an?\s|one\b|half\b)/iu;
const INSTRUCTION =
  /^(?:shake|stir|strain|muddle|pour|serve|build|combine|blend|mix|place|rim|rub|express|dry\s+shake|double\s+strain|fine\s+strain|roll|churn|swizzle|whip|add|in\s+an?|using|discard|remove|let|chill|flame|squeeze|drop|dip|coat|layer|warm|heat|boil|press|grate|dust|sprinkle|freeze|light\s+the|ignite|skewer|put|method|instructions?|directions?|preparation|glass(?:ware)?|served?|yields?|makes|servings?|technique|note|tools?|equipment)\b/i;
/** Words that belong to what is done with a drink, not to the name of a piece in it. */
const ACTION =
  /\b(?:over|into|onto|inside|glass|drink|rim|shaker|top|until|then|around|surface|before|after)\b/i;

/** Labels of what is said about a drink, not of what is in it. */
const ABOUT_DRINK =
  /^(?:(?:prep(?:aration)?|cook(?:ing)?|total|active)\s+time|total|time|glass(?:ware)?|yields?|serves?|servings?|makes|abv|calories|difficulty|rating|source|price|cost|volume|dilution|temperature|technique)\s*:/i;

/**
 * One cleaned line as a measure and the item it is of; the item is not looked up.
 *
 * Throws RefusedLine, naming the word, for whatever cannot be read for certain.
 */
export function readLine(text: string): Reading {
  const about = ABOUT_DRINK.exec(text);
  if (about !== null)
    throw new RefusedLine(`"${about[0]}" is about the drink and names no item: leave the line out.`);
  const garnish = GARNISH.exec(text);
  const reading = readMeasured(text.slice(garnish?.[0].length ?? 0));
  for (const name of [reading.item ?? "", ...reading.orItems]) requireExplained(name);
  return { ...reading, note: joinNotes([garnish === null ? null : "garnish", reading.note]) };
}

function readMeasured(text: string): Reading {
  const led = /^((?:\([^()]*\)\s*)+)([^(\s].*)$/.exec(text);
  if (led !== null) return readMeasured(`${led[2]} ${led[1]}`);
  const { rest, notes } = readLead(text);
  const top = readTop(rest, notes);
  if (top !== undefined) return top;
  const egg = EGG_PART.exec(rest);
  if (egg !== null)
    return withNotes(readMeasured(`${egg[2] || "1"} egg ${egg[1]?.toLowerCase()}${egg[3] ?? ""}`), notes);
  const part = PART_OF.exec(rest);
  if (part !== null)
    return withNotes(readPartOf(part[1]?.toLowerCase() ?? "", rest.slice(part[0].length)), notes);
  const quantity = readQuantity(rest);
  requireNoLostUnit(rest);
  return quantity === undefined
    ? withNotes(readWithoutLeadingAmount(rest), notes)
    : readAmountFirst(rest, quantity, notes);
}

/** "Nine Oaks rum 20 ml" begins with a number that is part of its name: where it makes no sense first, it is tried last. */
function readAmountFirst(text: string, quantity: Quantity, notes: readonly string[]): Reading {
  try {
    return readAfterQuantity(quantity, notes);
  } catch (error) {
    const behind = /^\p{L}/u.test(text) ? readItemFirst(text) : undefined;
    if (behind === undefined || behind.unit === "each") throw error;
    return withNotes(behind, notes);
  }
}

/** ".75 lemon" is bar shorthand for 0.75 oz lemon juice rather than three quarters of a lemon, which is written "3/4 lemon". */
function requireNoLostUnit(text: string): void {
  const found = /^(\d*[.,]\d+)\s+(?:fresh\s+)?(?:lemon|lime|orange|grapefruit|pineapple)$/i.exec(text);
  if (found === null || /^0?[.,]5$/.test(found[1] ?? "")) return;
  throw new RefusedLine(
    `No unit is written in "${text}": write "oz lemon juice", say, or "3/4 lemon" for the fruit.`,
  );
}

function withNotes(reading: Reading, notes: readonly string[]): Reading {
  return { ...reading, note: joinNotes([...notes, reading.note]) };
}

/** "about", "scant" and "float" in front of an amount, as notes. */
function readLead(text: string): { rest: string; notes: string[] } {
  const about = APPROXIMATELY.exec(text);
  if (about !== null) return { rest: text.slice(about[0].length), notes: ["about"] };
  const exact = /^(?:exactly|precisely)\s+(?=[\d.]|an?\b|one\b|half\b)/i.exec(text);
  if (exact !== null) return { rest: text.slice(exact[0].length), notes: [] };
  const bound =
    /^((?:just\s+|a\s+(?:little|bit)\s+|slightly\s+)?(?:under|over|shy\s+of|less\s+than|more\s+than)|at\s+least|up\s+to)\s+(?=[\d.]|an?\b|one\b|half\b)/i.exec(
      text,
    );
  if (bound !== null) return { rest: text.slice(bound[0].length), notes: [(bound[1] ?? "").toLowerCase()] };
  const optional = /^(?:an?\s+)?optional(?:ly)?(?:\s*[:,-]\s*|\s+)(?:garnish\s*:\s*)?(?=\S)/i.exec(text);
  if (optional !== null) {
    const { rest, notes } = readLead(text.slice(optional[0].length));
    return { rest, notes: ["optional", ...notes] };
  }
  const float = FLOAT.exec(text);
  if (float !== null) return { rest: text.slice(float[0].length), notes: ["float"] };
  const { qualifiers, rest } = readQualifiers(text);
  return qualifiers.length > 0 && /^[\d.]*\d/.test(rest)
    ? { rest, notes: qualifiers }
    : { rest: text, notes: [] };
}

/** "juice of 1/2 lemon" asks for half a lemon. */
function readPartOf(part: string, text: string): Reading {
  const quantity = readQuantity(text);
  if (quantity === undefined) {
    throw new RefusedLine(`"${part} of ${text}" has no number of pieces: write "${part} of 1 …".`);
  }
  const rest = quantity.rest.replace(/^\s*(?:of\s+)?(?:an?|one|of)\s+/i, " ").replace(/^\s*whole\s+/i, " ");
  const { name, orItems, notes } = readItemText(rest);
  requireName(name, text);
  requireOneThing(name);
  const note = joinNotes([quantity.range, `${part} of`, ...notes]);
  return { amount: quantity.amount, unit: "each", item: name, orItems, note, error: null };
}

function readWithoutLeadingAmount(text: string): Reading {
  const behind = readItemFirst(text);
  if (behind !== undefined) return behind;
  const label = LABEL.exec(text);
  const labelled = label === null ? undefined : readQuantity(text.slice(label[0].length));
  if (labelled !== undefined) return readAfterQuantity(labelled, [(label?.[1] ?? "").toLowerCase()]);
  const unit = readUnit(text);
  if (unit !== undefined) return readBareMeasure(text, unit);
  const vague = vagueMeasure(text);
  if (vague !== undefined) return readVague({ amount: 1, rest: text, vague, notes: [] });
  if (INSTRUCTION.test(text)) {
    throw new RefusedLine(`"${text}" reads like an instruction, not like an amount of an item.`);
  }
  return readBarePiece(text);
}

/** "dash of bitters" and "teaspoon of sugar" are one; "oz gin" has lost its amount. */
function readBareMeasure(text: string, found: UnitFound): Reading {
  const isSpoon = found.unit === "tsp" || found.unit === "tbsp";
  const isAction = /^\s*(?:in|into|over|on|onto|with|the|it|all|up)\b/i.test(found.rest);
  if (isAction || !(isSpoon || isHouseMeasure(found)) || /^(?:dashes|drops|splashes)\b/i.test(text)) {
    throw new RefusedLine(`No amount is written in "${text}": begin with a number.`);
  }
  return readAfterQuantity({ amount: 1, range: null, rest: text }, []);
}

/** "mint sprig" is one; "gin" alone is refused. */
function readBarePiece(text: string): Reading {
  requireNoLabel(text);
  const { qualifiers, rest } = readQualifiers(text);
  const { name, orItems, notes } = readItemText(rest);
  requireName(name, text);
  const unmeasured = notes.find((note) => /^(?:rinse|float|to rinse|for rinsing)/i.test(note));
  if (unmeasured !== undefined) refuseMeasure(unmeasured, { item: name });
  const isPiece = pieceItem(name) !== undefined || isUsuallyOne(name);
  const isPowder = notes.some((note) => /\b(?:grated|ground|shaved|crushed)\b/i.test(note));
  if (
    !isPiece ||
    isPowder ||
    /^ice\b/i.test(name) ||
    namesSeveral(name) ||
    /\d/.test(name) ||
    ACTION.test(name)
  ) {
    throw new RefusedLine(
      `No amount is written before "${name}": begin with a number and a unit, or with "top".`,
      { item: name },
    );
  }
  requireOneThing(name);
  requireRemarks(notes);
  const note = joinNotes([...qualifiers, ...notes]);
  return {
    amount: 1,
    unit: "each",
    item: pieceOrName(name),
    orItems: orItems.map((other) => pieceOfOther(name, other)),
    note,
    error: null,
  };
}

/** "Smoke: cinnamon stick" is understood only if what stands behind the colon is a remark, as in "Lime wedge: for garnish". */
function requireNoLabel(text: string): void {
  const behind = /:\s+(.*)$/.exec(text)?.[1];
  if (behind === undefined || /^(?:for|to|as|optional|use|adds?|used|on)\b/i.test(behind)) return;
  throw new RefusedLine(
    `":" in "${text.trim()}" is not understood: leave out what stands before or behind it.`,
  );
}
