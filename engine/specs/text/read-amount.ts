import {
  joinNotes,
  refuseMeasure,
  requireName,
  requireOnePoured,
  requireOneThing,
} from "#engine/specs/text/checks.ts";
import { type Reading, RefusedLine } from "#engine/specs/text/entry.ts";
import { readItemText } from "#engine/specs/text/item-text.ts";
import { readQualifiers, readUnit, type UnitFound, vagueMeasure } from "#engine/specs/text/measure-words.ts";
import { isCountable, isPlural, pieceItem, pieceOfOther } from "#engine/specs/text/piece-words.ts";
import { type Quantity, quantityIn, readQuantity } from "#engine/specs/text/quantity.ts";
import { statedTwice } from "#engine/specs/text/stated-twice.ts";
import { summed } from "#engine/specs/text/summed.ts";

const BY_WEIGHT = /\s*,\s*by weight\b|\s*\(\s*by weight\s*\)/i;

/** "1 (750 ml) bottle of red wine", "2 (12-ounce) cans of cola": so many times the size. */
const SIZED_CONTAINER =
  /^\s*(?:x\s*)?[([]?\s*(\d[\d./\s]*?)\s*-?\s*(ml|cl|l|(?:fl(?:uid)?[\s.]*)?(?:oz|ounce)|lit(?:er|re)|millilit(?:er|re)|kg|g|gram|lb|pound)s?\.?\s*[)\]]?\s+((?:bottle|can|tin|jigger|shot|carton|jar|box|pouch|packet|package|envelope|sachet|pkg|container)s?)\s+(?:of\s+)?/i;

/** Behind a unit these measure a second time: "2-6 oz cans" is so many cans, "4 oz glass wine" a glassful. */
const CONTAINERS =
  /^(?:cans|bottles|tins|jars|cartons|boxes|packets|glass(?:es)?|shots?|jiggers?|handfuls?|pinch(?:es)?|parts?|scoops?|bunch(?:es)?)\b/i;

/** What follows an amount: a unit and an item, or pieces that are counted. */
export function readAfterQuantity(written: Quantity, notes: readonly string[]): Reading {
  const quantity = { ...written, rest: written.rest.replace(/^(?:\s*x\s+|ish\s+)(?=\p{L})/iu, " ") };
  const found = readUnit(quantity.rest);
  if (found !== undefined) return readInUnit(quantity, found, notes);
  const sized = /^\s*\(([^()]*)\)\s*(?=pieces?\b|pcs?\b)(.*)$/i.exec(quantity.rest);
  if (sized !== null)
    return readAfterQuantity({ ...quantity, rest: ` ${sized[2]}` }, [...notes, sized[1] ?? ""]);
  return readCounted(quantity, notes);
}

/** "45 ml - 60 ml gin" writes the unit of a range twice: the text as "45-60 ml gin", or undefined. */
function rangeInUnit(quantity: Quantity, found: UnitFound): Quantity | undefined {
  const to = /^\s*(?:-|to\s|or\s)\s*(?=[\d.])/i.exec(found.rest);
  const end =
    to === null || quantity.range !== null ? undefined : readQuantity(found.rest.slice(to[0].length));
  if (end === undefined || readUnit(end.rest)?.unit !== found.unit) return undefined;
  return readQuantity(`${quantity.amount}-${end.amount}${end.rest}`);
}

function readInUnit(quantity: Quantity, found: UnitFound, notes: readonly string[]): Reading {
  const whole = rangeInUnit(quantity, found);
  if (whole !== undefined) return readAfterQuantity(whole, notes);
  const { rest, range } = quantity;
  const first = { amount: quantity.amount * found.factor, unit: found.unit, rest: found.rest };
  const sum = range === null ? summed(first) : undefined;
  const amount = sum?.amount ?? first.amount;
  const unit = found.unit === "oz" && BY_WEIGHT.test(found.rest) ? "oz-wt" : found.unit;
  const twice = statedTwice({ ...first, amount, rest: sum?.rest ?? first.rest });
  if (amount < 1 && /^\s*grs?\b/i.test(rest)) {
    throw new RefusedLine(
      `"${rest.trim()}" can be read two ways: write "g", or the whole word it is short for.`,
    );
  }
  if (/^\s*each\b/i.test(twice.rest)) {
    throw new RefusedLine(`"each" is of several items: write one item on a line.`, { amount, unit });
  }
  const { text, notes: inside } = withoutContainer(twice.rest.replace(BY_WEIGHT, " "));
  const item = readItemText(text);
  requireName(item.name, rest, { amount, unit });
  const container = CONTAINERS.exec(text.trim())?.[0];
  if (container !== undefined) refuseMeasure(container);
  requireOnePoured(item.name);
  const written = found.factor === 1 ? null : `${quantity.amount} ${rest.trim().split(/[\s.]/)[0]}`;
  const note = joinNotes([
    ...notes,
    range,
    written,
    sum?.note ?? null,
    ...found.qualifiers,
    twice.note,
    ...inside,
    ...item.notes,
  ]);
  const isCount = unit === "each" || unit === "piece";
  const [name = "", ...orItems] = [item.name, ...item.orItems].map((each) =>
    isCount ? pieceOrName(each) : each,
  );
  return { amount, unit, item: name, orItems, note, error: null };
}

/** "330 ml can of cola" and "2 tsp or so syrup": what stands between the unit and the name is a remark. */
function withoutContainer(text: string): { text: string; notes: string[] } {
  const found =
    /^\s*-?\s*(?:(or so)\b|(bottle|can|tin|carton|jar|box|pack(?:et)?|float|rinse|drizzle)\b(?:\s+of\b)?)\s+/i.exec(
      text,
    );
  if (found === null) return { text, notes: [] };
  return { text: text.slice(found[0].length), notes: [(found[1] ?? found[2] ?? "").toLowerCase()] };
}

/** An amount without a unit: pieces of a cut, or things counted whole. */
function readCounted(quantity: Quantity, notes: readonly string[]): Reading {
  const sized = SIZED_CONTAINER.exec(quantity.rest);
  if (sized !== null) return readSizedContainer(quantity, sized, notes);
  const times = readTimes(quantity, notes);
  if (times !== undefined) return times;
  const rest = quantity.rest.replace(/^\s*(?:of\s+)?(?:an?\s+)?(?:garnish\s+(?=\p{L}))?/iu, "");
  const vague = vagueMeasure(rest);
  if (vague !== undefined) return readVague({ amount: quantity.amount, rest, vague, notes });
  return readPieces(quantity, rest, notes) ?? readWhole(quantity, rest, notes);
}

/** "2 x 25 ml gin" is 50 ml. */
function readTimes({ amount, rest }: Quantity, notes: readonly string[]): Reading | undefined {
  const times = /^\s*x\s*(?=[\d.])/i.exec(rest);
  const each = times === null ? undefined : readQuantity(rest.slice(times[0].length));
  const unit = each === undefined || each.range !== null ? undefined : readUnit(each.rest);
  if (each === undefined || unit === undefined) return undefined;
  const written = `${amount} x ${each.amount} ${each.rest.slice(0, each.rest.length - unit.rest.length).trim()}`;
  return readAfterQuantity({ ...each, amount: amount * each.amount }, [...notes, written]);
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
  const others = orItems.map((other) => pieceOfOther(name, other));
  return { amount, unit: "each", item, orItems: others, note, error: null };
}

function readWhole({ amount, range }: Quantity, text: string, notes: readonly string[]): Reading {
  const { name, orItems, notes: remarks } = readItemText(text);
  requireName(name, String(amount), { amount });
  if (hasMeasure(name, amount)) {
    const word = name.split(" ")[0] ?? "";
    throw new RefusedLine(
      `"${word}" in "${amount} ${name}" is not understood: write oz, ml, g … or only what is counted.`,
      { amount },
    );
  }
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

/** "2 punnets strawberries", "1 pkg berries", "1/2 yolk of 1 egg": a word unknown here measures what follows it. */
function hasMeasure(name: string, amount: number): boolean {
  if (/^(?:fresh )?egg (?:whites|yolks)$/i.test(name)) return false;
  const [first = "", ...more] = name.split(" ");
  if (/\sof\s/i.test(name)) return true;
  // An abbreviation that no list here has, in another language perhaps: "2 kpl limes", "3 stk eggs".
  if (more.length > 0 && /^[b-df-hj-np-tv-xz]{2,4}\.?$/.test(first)) return true;
  return more.length > 0 && (isPlural(first) || (amount === 1 && isPlural(name)));
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

/** "(12 oz)" behind one can, "(750 ml each)" behind two bottles, "(6 cl)" behind so many parts; of two cans "(12 oz)" could be each. */
function statedSize(
  inside: string,
  { amount, vague }: { amount: number; vague: string },
): Quantity | undefined {
  const each = /^each\s+|\s+each$/i;
  const size = quantityIn(
    inside.replace(each, "").replace(/^(?:about|approx(?:imately)?\.?|ca\.|~)\s*/i, ""),
  );
  const unit = size === undefined ? undefined : readUnit(size.rest);
  if (size === undefined || unit === undefined || unit.rest.trim() !== "") return undefined;
  if (each.test(inside)) return { ...size, amount: amount * size.amount };
  return amount === 1 || /^parts?$/i.test(vague) ? size : undefined;
}

/** "1 can (12 oz) cola" and "1 shot/30 ml gin" say how much after all; "1 pinch of salt" does not. */
export function readVague(line: {
  amount: number;
  rest: string;
  vague: string;
  notes: readonly string[];
}): Reading {
  const { amount, rest, vague, notes } = line;
  const after = rest.slice(rest.indexOf(vague) + vague.length);
  const bracket = /^\.?\s*[([]([^()[\]]*)[)\]]/.exec(after) ?? /\s*\(([^()]*)\)[,.]?$/.exec(after);
  const stated = bracket === null ? undefined : statedSize(bracket[1] ?? "", line);
  if (bracket !== null && stated !== undefined) {
    const item = `${after.slice(0, bracket.index)} ${after.slice(bracket.index + bracket[0].length)}`;
    return readAfterQuantity({ ...stated, rest: `${stated.rest} ${item}` }, [...notes, `${amount} ${vague}`]);
  }
  const again = /^\s*[/|=]\s*/.exec(after);
  const measured = again === null ? undefined : readQuantity(after.slice(again[0].length));
  if (measured !== undefined && readUnit(measured.rest) !== undefined)
    return readAfterQuantity(measured, [...notes, `${amount} ${vague}`]);
  const { name } = readItemText(after);
  const isName = name !== "" && readUnit(name) === undefined;
  refuseMeasure(vague, { item: isName ? name : null });
}
