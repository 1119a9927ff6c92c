import { type Reading, RefusedLine } from "#engine/specs/text/entry.ts";
import { readItemText } from "#engine/specs/text/item-text.ts";
import { readQualifiers, readUnit, type UnitFound, vagueMeasure } from "#engine/specs/text/measure-words.ts";
import { isCountable, isPlural, pieceItem } from "#engine/specs/text/piece-words.ts";
import { type Quantity, readQuantity } from "#engine/specs/text/quantity.ts";
import { statedTwice } from "#engine/specs/text/stated-twice.ts";

const GARNISH =
  /^(?:to\s+|for\s+|optional\s+)?garnish(?:ed|es|ing)?(?:\s*[:-]\s*|\s+(?:with\s+)?)|^decorate\s+with\s+/i;
const APPROXIMATELY =
  /^(?:about|approx(?:imately)?\.?|ca?\.|circa|around|roughly|~|≈|up to)\s*(?=[\d.]|an?\b|one\b|half\b)/i;
const TOP_FIRST =
  /^(?:(?:to\s+)?(?:top(?:ped)?(?:[\s-]?(?:up|off))?|fill(?:ed)?(?:\s+(?:up|to top))?|complete|finish|lengthen)(?:\s+(?:the\s+)?(?:glass|drink))?(?:\s+(?:with|by|of))?)(?:\s*[:,-]\s*|\s+)(?:an?\s+)?/i;
const TOP_LAST =
  /(?:\s*[,;(:-]\s*|\s+)\(?\s*(?:enough\s+)?(?:to|for)?\s*(?:top(?:ping)?(?:[\s-]?(?:up|off))?|fill(?:\s+up)?)(?:\s+(?:with|up|off|(?:the\s+)?(?:glass|drink)))?\s*\)?$/i;
const PART_OF =
  /^(?:the\s+)?(?:freshly\s+squeezed\s+|fresh\s+|strained\s+)?(juice|zest|peel|rind|pulp)\s+(?:of|from)\s+(?:the\s+)?/i;
const INSTRUCTION =
  /^(?:shake|stir|strain|muddle|pour|serve|build|combine|blend|mix|place|rim|rub|express|double|fine|dry|roll|churn|swizzle|whip|add(?:\s+(?:all|the|ice))|in\s+an?|using|discard|remove|let|chill|method|instructions?|directions?|preparation|glass(?:ware)?|ice|served?|yields?|makes|servings?|technique|note)\b(?!\s*(?:cubes?|cream|tea|wine)\b)/i;

/**
 * One cleaned line as a measure and the item it is of; the item is not looked up.
 *
 * Throws RefusedLine, naming the word, for whatever cannot be read for certain.
 */
export function readLine(text: string): Reading {
  const { body, verbatim } = splitVerbatimNote(text);
  const garnish = GARNISH.exec(body);
  const reading = garnish === null ? readMeasured(body) : readGarnish(body.slice(garnish[0].length));
  if (verbatim === null) return reading;
  return { ...reading, note: reading.note === null ? verbatim : `${reading.note}, ${verbatim}` };
}

/** Everything after " # " is a note as it stands. */
function splitVerbatimNote(text: string): { body: string; verbatim: string | null } {
  const at = text.indexOf(" # ");
  return at === -1
    ? { body: text, verbatim: null }
    : { body: text.slice(0, at), verbatim: text.slice(at + 3) };
}

function readGarnish(text: string): Reading {
  const reading = readMeasured(text.replace(/^:?\s*/, "").replace(/^(?:with\s+)/i, ""), { isGarnish: true });
  return { ...reading, note: joinNotes(["garnish", reading.note]) };
}

function readMeasured(text: string, { isGarnish = false } = {}): Reading {
  const about = APPROXIMATELY.exec(text);
  const body = about === null ? text : text.slice(about[0].length);
  const notes = about === null ? [] : ["about"];
  const first = TOP_FIRST.exec(body);
  if (first !== null) return readTop(body.slice(first[0].length), notes);
  const last = TOP_LAST.exec(body);
  if (last !== null) return readTop(body.slice(0, last.index), notes);
  const part = PART_OF.exec(body);
  if (part !== null) return readPartOf(part[1]?.toLowerCase() ?? "", body.slice(part[0].length));
  const quantity = readQuantity(body);
  if (quantity !== undefined) return readAfterQuantity(quantity, notes);
  return readWithoutLeadingAmount(body, isGarnish);
}

/** "top with soda" has no amount; "top with 2 oz soda" has one, and is a measure. */
function readTop(text: string, notes: string[]): Reading {
  const quantity = readQuantity(text);
  if (quantity !== undefined) return readAfterQuantity(quantity, [...notes, "top"]);
  const unit = readUnit(text);
  if (unit !== undefined && isHouseMeasure(unit)) {
    return readAfterQuantity({ amount: 1, range: null, rest: text }, [...notes, "top"]);
  }
  const { name, orItems, notes: remarks } = readItemText(text);
  requireName(name, text);
  return {
    amount: null,
    unit: "top",
    item: name,
    orItems,
    note: joinNotes([...notes, ...remarks]),
    error: null,
  };
}

/** "juice of 1/2 lemon" asks for half a lemon. */
function readPartOf(part: string, text: string): Reading {
  const quantity = readQuantity(text);
  if (quantity === undefined)
    throw new RefusedLine(`"${part} of ${text}" has no number of pieces: write "${part} of 1 …".`);
  const rest = quantity.rest.replace(/^\s*(?:an?|of)\s+/i, " ").replace(/^\s*(?:of\s+)?(?:an?|one)\s+/i, " ");
  const { name, orItems, notes } = readItemText(rest);
  requireName(name, text);
  const note = joinNotes([quantity.range, `${part} of`, ...notes]);
  return { amount: quantity.amount, unit: "each", item: name, orItems, note, error: null };
}

function readAfterQuantity(quantity: Quantity, notes: string[]): Reading {
  const { rest, range } = quantity;
  const unit = readUnit(rest);
  if (unit === undefined) return readCounted(quantity, notes);
  const amount = quantity.amount * unit.factor;
  const twice = statedTwice({ amount, unit: unit.unit, rest: unit.rest });
  const isEachOf = /^\s*each\b/i.test(twice.rest);
  if (isEachOf)
    throw new RefusedLine(`"each" is of several items: write one item on a line.`, {
      amount,
      unit: unit.unit,
    });
  const item = readItemText(byWeight(twice.rest));
  const understood = { amount, unit: weightUnit(unit.unit, rest) };
  requireName(item.name, rest, understood);
  const written = unit.factor === 1 ? null : `${quantity.amount} ${unitAsWritten(rest)}`;
  const all = [...notes, range, written, ...unit.qualifiers, twice.note, ...item.notes];
  const counted =
    understood.unit === "each" || understood.unit === "piece"
      ? (pieceItem(item.name) ?? item.name)
      : item.name;
  return { ...understood, item: counted, orItems: item.orItems, note: joinNotes(all), error: null };
}

function unitAsWritten(rest: string): string {
  return /^[\s-]*([\p{L}]+)/u.exec(rest)?.[1] ?? "";
}

/** Ounces said to be by weight anywhere in the line are not fluid. */
function weightUnit(unit: UnitFound["unit"], rest: string): UnitFound["unit"] {
  return unit === "oz" && /\bby weight\b/i.test(rest) ? "oz-wt" : unit;
}

function byWeight(rest: string): string {
  return rest.replace(/[\s,(]*\bby weight\b\)?/i, " ");
}

/** An amount without a unit: pieces of a cut, or things counted whole. */
function readCounted(quantity: Quantity, notes: string[]): Reading {
  const { amount, range } = quantity;
  const rest = quantity.rest.replace(/^\s*(?:of\s+)?(?:an?\s+)?/i, "");
  const vague = vagueMeasure(rest);
  if (vague !== undefined) return readVague({ amount, rest, vague, notes });
  const { qualifiers, rest: unqualified } = readQualifiers(rest);
  const text = readItemText(rest);
  const bare = readItemText(unqualified);
  requireName(text.name, rest, { amount });
  const cut = pieceItem(bare.name);
  if (cut !== undefined) {
    requireOneThing(bare.name);
    const orItems = bare.orItems.map((item) => pieceItem(item) ?? item);
    const note = joinNotes([...notes, range, ...qualifiers, ...bare.notes]);
    return { amount, unit: "each", item: cut, orItems, note, error: null };
  }
  const isWhole = isCountable(text.name) || (isPlural(text.name) && Number.isInteger(amount));
  if (!isWhole) {
    throw new RefusedLine(
      `No unit between the amount and "${text.name}": write oz, ml, dash … or "each" for pieces.`,
      { amount, item: text.name },
    );
  }
  requireOneThing(text.name);
  return {
    amount,
    unit: "each",
    item: text.name,
    orItems: text.orItems,
    note: joinNotes([...notes, range, ...text.notes]),
    error: null,
  };
}

/** "1 can (12 oz) cola" says how much after all; "1 pinch of salt" does not. */
function readVague(line: { amount: number; rest: string; vague: string; notes: string[] }): Reading {
  const { amount, rest, vague, notes } = line;
  const after = rest.slice(rest.indexOf(vague) + vague.length);
  const stated = /^\s*[([]([^()[\]]*)[)\]]/.exec(after);
  const inside = stated === null || amount !== 1 ? undefined : readQuantity(stated[1] ?? "");
  const unit = inside === undefined ? undefined : readUnit(inside.rest);
  if (stated !== null && inside !== undefined && unit !== undefined && unit.rest.trim() === "") {
    return readAfterQuantity({ ...inside, rest: `${inside.rest} ${after.slice(stated[0].length)}` }, [
      ...notes,
      `${amount} ${vague}`,
    ]);
  }
  const { name } = readItemText(after);
  throw new RefusedLine(
    `"${vague}" is not a measure that can be reckoned with: write oz, ml, cl, dash, barspoon, g … or a number of pieces.`,
    { amount, item: name === "" ? null : name },
  );
}

function readWithoutLeadingAmount(text: string, isGarnish: boolean): Reading {
  const behind = readTrailingAmount(text);
  if (behind !== undefined) return behind;
  const labelled = /^(\p{L}[\p{L}\s]{0,24}):\s*(?=[\d.]|an?\s|one\b|half\b)/iu.exec(text);
  if (labelled !== null) {
    const quantity = readQuantity(text.slice(labelled[0].length));
    if (quantity !== undefined) return readAfterQuantity(quantity, [(labelled[1] ?? "").toLowerCase()]);
  }
  const unit = readUnit(text);
  if (unit !== undefined && isHouseMeasure(unit))
    return readAfterQuantity({ amount: 1, range: null, rest: text }, []);
  if (!isGarnish && INSTRUCTION.test(text)) {
    throw new RefusedLine(`"${text}" reads like an instruction, not a measure of an item.`);
  }
  const vague = vagueMeasure(text);
  if (vague !== undefined) return readVague({ amount: 1, rest: text, vague, notes: [] });
  return readBarePiece(text);
}

/** "mint sprig" is one; "gin" alone is refused. */
function readBarePiece(text: string): Reading {
  const { qualifiers, rest } = readQualifiers(text);
  const { name, orItems, notes } = readItemText(rest);
  requireName(name, text);
  const cut = pieceItem(name);
  const lastWord = name.split(" ").at(-1) ?? "";
  const isOne = (cut !== undefined || isCountable(name)) && !isPlural(lastWord);
  if (!isOne)
    throw new RefusedLine(`No amount before "${name}": write one, as "1 oz ${name}", or "top ${name}".`, {
      item: name,
    });
  requireOneThing(name);
  const also = orItems.map((item) => pieceItem(item) ?? item);
  return {
    amount: 1,
    unit: "each",
    item: cut ?? name,
    orItems: also,
    note: joinNotes([...qualifiers, ...notes]),
    error: null,
  };
}

/** "gin 60 ml", "gin: 2 oz", "lime juice - 22.5 ml". */
function readTrailingAmount(text: string): Reading | undefined {
  const found = /^(.*?[\p{L})'.])\s*(?::|-|,|\s)\s*((?:[\d.]|one\b|two\b|half\b).*)$/iu.exec(text);
  if (found === null) return undefined;
  const quantity = readQuantity(found[2] ?? "");
  const unit = quantity === undefined ? undefined : readUnit(quantity.rest);
  if (quantity === undefined || unit === undefined || unit.rest.trim() !== "") return undefined;
  return readAfterQuantity({ ...quantity, rest: `${quantity.rest} ${found[1]}` }, []);
}

function isHouseMeasure({ unit }: UnitFound): boolean {
  return unit === "dash" || unit === "barspoon" || unit === "drop" || unit === "splash";
}

function requireName(name: string, text: string, understood: Partial<Reading> = {}): void {
  if (/\p{L}/u.test(name)) return;
  throw new RefusedLine(`No item is named in "${text.trim()}": write it after the amount.`, understood);
}

/** "lime wheel and mint sprig" are two items, and one line can hold one. */
function requireOneThing(name: string): void {
  const joint = /\s(and|&|\+|with|plus)\s/i.exec(name);
  if (joint === null) return;
  throw new RefusedLine(`"${joint[1]}" joins two items in "${name}": write one item on a line.`);
}

function joinNotes(notes: readonly (string | null)[]): string | null {
  const said = notes.filter((note) => note !== null && note !== "");
  return said.length === 0 ? null : said.join(", ");
}
