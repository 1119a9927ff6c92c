import { joinNotes, refuseMeasure, requireName, requireOneThing } from "#engine/specs/text/checks.ts";
import { type Reading, RefusedLine } from "#engine/specs/text/entry.ts";
import { readItemText } from "#engine/specs/text/item-text.ts";
import { readQualifiers, readUnit, type UnitFound, vagueMeasure } from "#engine/specs/text/measure-words.ts";
import { isCountable, isPlural, pieceItem } from "#engine/specs/text/piece-words.ts";
import { type Quantity, readQuantity } from "#engine/specs/text/quantity.ts";
import { statedTwice } from "#engine/specs/text/stated-twice.ts";

const BY_WEIGHT = /\s*,\s*by weight\b|\s*\(\s*by weight\s*\)/i;

/** "1 (750 ml) bottle of red wine", "2 (12-ounce) cans of cola": so many times the size. */
const SIZED_CONTAINER =
  /^\s*[([]?\s*(\d[\d./\s]*?)\s*-?\s*(ml|cl|l|oz|ounce|lit(?:er|re)|milliliter)s?\.?\s*[)\]]?\s+((?:bottle|can)s?)\s+(?:of\s+)?/i;

/** What follows an amount: a unit and an item, or pieces that are counted. */
export function readAfterQuantity(quantity: Quantity, notes: readonly string[]): Reading {
  const found = readUnit(quantity.rest);
  return found === undefined ? readCounted(quantity, notes) : readInUnit(quantity, found, notes);
}

function readInUnit(quantity: Quantity, found: UnitFound, notes: readonly string[]): Reading {
  const { rest, range } = quantity;
  const amount = quantity.amount * found.factor;
  const unit = found.unit === "oz" && BY_WEIGHT.test(found.rest) ? "oz-wt" : found.unit;
  const twice = statedTwice({ amount, unit: found.unit, rest: found.rest });
  if (/^\s*each\b/i.test(twice.rest)) {
    throw new RefusedLine(`"each" is of several items: write one item on a line.`, { amount, unit });
  }
  const item = readItemText(twice.rest.replace(BY_WEIGHT, " "));
  requireName(item.name, rest, { amount, unit });
  const written = found.factor === 1 ? null : `${quantity.amount} ${rest.trim().split(/[\s.]/)[0]}`;
  const note = joinNotes([...notes, range, written, ...found.qualifiers, twice.note, ...item.notes]);
  const isCount = unit === "each" || unit === "piece";
  const [name = "", ...orItems] = [item.name, ...item.orItems].map((each) =>
    isCount ? pieceOrName(each) : each,
  );
  return { amount, unit, item: name, orItems, note, error: null };
}

/** An amount without a unit: pieces of a cut, or things counted whole. */
function readCounted(quantity: Quantity, notes: readonly string[]): Reading {
  const sized = SIZED_CONTAINER.exec(quantity.rest);
  if (sized !== null) return readSizedContainer(quantity, sized, notes);
  const rest = quantity.rest.replace(/^\s*(?:of\s+)?(?:an?\s+)?/i, "");
  const vague = vagueMeasure(rest);
  if (vague !== undefined) return readVague({ amount: quantity.amount, rest, vague, notes });
  return readPieces(quantity, rest, notes) ?? readWhole(quantity, rest, notes);
}

function readPieces(
  { amount, range }: Quantity,
  text: string,
  notes: readonly string[],
): Reading | undefined {
  const { qualifiers, rest } = readQualifiers(text);
  const { name, orItems, notes: remarks } = readItemText(rest);
  const item = pieceItem(name);
  if (item === undefined) return undefined;
  requireOneThing(name);
  const note = joinNotes([...notes, range, ...qualifiers, ...remarks]);
  return { amount, unit: "each", item, orItems: orItems.map(pieceOrName), note, error: null };
}

function readWhole({ amount, range }: Quantity, text: string, notes: readonly string[]): Reading {
  const { name, orItems, notes: remarks } = readItemText(text);
  requireName(name, String(amount), { amount });
  if (!isCountable(name) && !(isPlural(name) && Number.isInteger(amount))) {
    throw new RefusedLine(
      `No unit between the amount and "${name}": write oz, ml, dash … or "each" for pieces.`,
      { amount, item: name },
    );
  }
  requireOneThing(name);
  const note = joinNotes([...notes, range, ...remarks]);
  return { amount, unit: "each", item: name, orItems, note, error: null };
}

/** "cucumber slices" as the one piece that it is counted in, any other name as it is. */
export function pieceOrName(name: string): string {
  return pieceItem(name) ?? name;
}

function readSizedContainer(quantity: Quantity, sized: RegExpExecArray, notes: readonly string[]): Reading {
  const size = readQuantity(sized[1] ?? "");
  if (size === undefined || size.rest.trim() !== "") {
    throw new RefusedLine(`"${sized[0].trim()}" is no size of a container: write the whole amount.`);
  }
  const amount = quantity.amount * size.amount;
  const rest = `${sized[2]} ${quantity.rest.slice(sized[0].length)}`;
  return readAfterQuantity({ amount, range: null, rest }, [...notes, `${quantity.amount} ${sized[3]}`]);
}

/** "1 can (12 oz) cola" says how much after all; "1 pinch of salt" does not. */
export function readVague(line: {
  amount: number;
  rest: string;
  vague: string;
  notes: readonly string[];
}): Reading {
  const { amount, rest, vague, notes } = line;
  const after = rest.slice(rest.indexOf(vague) + vague.length);
  const stated = /^\s*[([]([^()[\]]*)[)\]]/.exec(after);
  const inside = stated === null || amount !== 1 ? undefined : readQuantity(stated[1] ?? "");
  const unit = inside === undefined ? undefined : readUnit(inside.rest);
  if (stated !== null && inside !== undefined && unit !== undefined && unit.rest.trim() === "") {
    const item = after.slice(stated[0].length);
    return readAfterQuantity({ ...inside, rest: `${inside.rest} ${item}` }, [...notes, `${amount} ${vague}`]);
  }
  const { name } = readItemText(after);
  const isName = name !== "" && readUnit(name) === undefined;
  refuseMeasure(vague, { item: isName ? name : null });
}
