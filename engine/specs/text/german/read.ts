import {
  joinNotes,
  refuseMeasure,
  requireExplained,
  requireName,
  requireOnePoured,
} from "#engine/specs/text/checks.ts";
import { type Reading, RefusedLine } from "#engine/specs/text/entry.ts";
import { END, GARNISHED, words } from "#engine/specs/text/german/marks.ts";
import { isCountedName, isOneAlone, onePiece, pieceNamed } from "#engine/specs/text/german/pieces.ts";
import {
  APPROXIMATELY,
  DESCRIPTIONS,
  FILLING,
  NUMBERS,
  PARTS_OF,
  PIECES,
  PROSE,
  QUALIFIERS,
  REMARKS,
  STEPS,
  TOOLS,
  UNIT_LETTERS,
  UNIT_WORDS,
  VAGUE_WORDS,
} from "#engine/specs/text/german/words.ts";
import { readItemText } from "#engine/specs/text/item-text.ts";
import { readUnit } from "#engine/specs/text/measure-words.ts";
import { type Quantity, readQuantity } from "#engine/specs/text/quantity.ts";
import { readAfterQuantity } from "#engine/specs/text/read-amount.ts";

const ENDING = "(?:e[rnms]?)?";

const UNITS = [
  ...UNIT_WORDS.map(([unit, spelled]) => [unit, words(`^\\s*(?:${spelled})\\.?${END}`)] as const),
  ...UNIT_LETTERS.map(([unit, letters]) => [unit, words(`^\\s*(?:${letters})\\.?${END}`, "u")] as const),
];
const VAGUE = words(`^\\s*(?:${VAGUE_WORDS})\\.?${END}`);
const PIECE = words(
  `^\\s*(${PIECES.flat().join("|")})${END}\\s*(?:vo[nm]\\s+(?:eine?[rms]\\s+|der\\s+)?)?(?=\\p{L})`,
);
const QUALIFIER = words(`^\\s*((?:(?:sehr|frisch)\\s+)?(?:${QUALIFIERS})${ENDING})${END}\\s*,?\\s*`);
const ABOUT = words(`^(?:${APPROXIMATELY})(?!\\p{L})\\s*(?=\\d|\\p{L})`);
const NUMBER = NUMBERS.map(([spelled, figures]) => [words(`^(?:${spelled})${END}`), figures] as const);
const PART_OF = words(
  `^(?:(?:frische?r?|frisch\\s+gepresster)\\s+)?(${PARTS_OF})\\s+(?:vo[nm]\\s+)?(?=\\d|[½¼¾]|eine|halbe|zwei|drei|vier)`,
);
const FILLED = [
  words(`^(.+?),?\\s+\\(?(?:zum|zu)\\s+(?:${FILLING})\\)?$`),
  words(`^(?:mit\\s+)?(.+?)\\s+(?:${FILLING})\\s*(\\([^()]*\\))?$`),
  words(`^(?:${FILLING})\\s+mit\\s+(.+)$`),
  words(`^(?:${FILLING}|filler|aufguss)\\s*:\\s*(.+)$`),
];
const REMARK = words(`\\s+(${REMARKS})${END}\\s*(?=$|[,(])`);
const OR = /(?<=[\s(])oder(\s+)(?!nach\s|ähnlich|mehr|weniger)/giu;
const JOINED = words(`\\s(und|oder|mit|plus|sowie|samt)\\s`);
const LEFT_OVER = words(`(?:^|\\s)(${PROSE})(?=\\s|$)`, "u");
const STEP = words(`(?:^|\\s)(?:${STEPS}|${TOOLS})(?=\\s|$|[.,])`);
const BARE = words(`^(?:${DESCRIPTIONS})(?:e[rnms]?)$`);

/**
 * One cleaned German line as a measure and the item it is of: "2 Spritzer Bitter" → 2 dash "Bitter", "3 Scheiben Gurke" →
 * 3 each "Gurkenscheibe", "mit Soda auffüllen" → top "Soda".
 *
 * A name for which `isItem` holds is one, whatever words it has. Throws RefusedLine for what cannot be read for certain.
 */
export function readGermanLine(text: string, isItem: (name: string) => boolean): Reading {
  const garnish = GARNISHED.exec(text);
  const line = text.slice(garnish?.[0].length ?? 0);
  const reading = readFilling(line, isItem) ?? readMeasured(line);
  const names = [reading.item ?? "", ...reading.orItems];
  for (const name of names) if (!isItem(name)) requireGermanName(name);
  return { ...reading, note: joinNotes([garnish === null ? null : "Garnitur", reading.note]) };
}

/** "mit Soda auffüllen" has no amount; "mit 6 cl Soda auffüllen" has one, and is a measure. */
function readFilling(text: string, isItem: (name: string) => boolean): Reading | undefined {
  const found = FILLED.map((form) => form.exec(text)).find((match) => match !== null);
  if (found === undefined) return undefined;
  const what = `${found[1] ?? ""}${found[2] === undefined ? "" : ` ${found[2]}`}`;
  const quantity = readQuantity(inFigures(what));
  if (quantity !== undefined) {
    const measured = readMeasured(what);
    return { ...measured, note: joinNotes(["auffüllen", measured.note]) };
  }
  const { name, orItems, notes } = readItemText(inShape(what));
  requireName(name, text);
  if (VAGUE.test(name)) refuseMeasure(VAGUE.exec(name)?.[0].trim() ?? "", { item: null });
  if (!isItem(name) && (isCountedName(name) || /^eis$/i.test(name.split(" ").at(-1) ?? ""))) {
    throw new RefusedLine(`"${name}" does not fill a glass up: write its amount.`, { item: name });
  }
  return tidied({ amount: null, unit: "top", item: name, orItems, note: joinNotes(notes), error: null });
}

function readMeasured(text: string): Reading {
  const about = ABOUT.exec(text);
  const notes = about === null ? [] : ["etwa"];
  const rest = text.slice(about?.[0].length ?? 0);
  const part = PART_OF.exec(rest);
  if (part !== null) return readPartOf(part[1] ?? "", rest.slice(part[0].length), notes);
  const { qualifiers, rest: plain } = readQualifiers(rest);
  const quantity = readQuantity(inFigures(plain));
  if (quantity === undefined) return readWithoutAmount(rest, notes);
  return readCounted(quantity, [...notes, ...qualifiers]);
}

/** The text with the German number that it begins with in figures: "eine halbe Zitrone" → "1/2 Zitrone". */
function inFigures(text: string): string {
  const plain = text.replace(/^([\d.,/\s]+?)\s+bis\s+(?=\d)/iu, "$1-");
  for (const [pattern, figures] of NUMBER) {
    const found = pattern.exec(plain);
    if (found !== null) return `${figures}${plain.slice(found[0].length)}`;
  }
  return plain;
}

/** What follows an amount, its German words of measure put into the codes of units. */
function readCounted(quantity: Quantity, notes: readonly string[]): Reading {
  const { qualifiers, rest } = readQualifiers(quantity.rest.replace(/^\s*x\s+/i, " "));
  const said = [...notes, ...qualifiers];
  const vague = VAGUE.exec(rest);
  if (vague !== null) refuseMeasure(vague[0].trim());
  for (const [unit, pattern] of UNITS) {
    const found = pattern.exec(rest);
    if (found !== null) return readInUnit(quantity, unit, rest.slice(found[0].length), said);
  }
  const piece = PIECE.exec(rest);
  if (piece !== null) return readPiece(quantity, piece, rest, said);
  if (readUnit(rest) === undefined && !isCountedName(nameIn(rest))) {
    throw new RefusedLine(
      `No unit between the amount and "${nameIn(rest)}": write oz, ml, dash … or "each" for pieces.`,
      { amount: quantity.amount, item: nameIn(rest) },
    );
  }
  if (readUnit(rest) !== undefined) return finished(quantity, rest, said);
  return readInUnit(quantity, "each", rest, said);
}

function readInUnit(quantity: Quantity, unit: string, text: string, notes: readonly string[]): Reading {
  return finished(quantity, ` ${unit} ${text.replace(/^\s*vo[nm]\s+/iu, " ").trim()}`, notes);
}

/** "3 Scheiben Gurke" → "3 each Gurkenscheibe". */
function readPiece(
  quantity: Quantity,
  piece: RegExpExecArray,
  rest: string,
  notes: readonly string[],
): Reading {
  const { qualifiers, rest: of } = readQualifiers(rest.slice(piece[0].length));
  const [, word = "", after = ""] = /^([\p{L}-]+)(.*)$/su.exec(of.trim()) ?? [];
  const named = pieceNamed(piece[1] ?? "", word);
  return finished(quantity, ` each ${named}${after}`, [...notes, ...qualifiers]);
}

/** By the reader of English, which sees units, brackets, commas and figures alike; remarks that are German are bracketed first. */
function finished(quantity: Quantity, rest: string, notes: readonly string[]): Reading {
  const text = inShape(rest);
  const range = quantity.range?.replace(" to ", " bis ") ?? null;
  const reading = readAfterQuantity({ ...quantity, range: null, rest: text }, []);
  return tidied({ ...reading, note: joinNotes([...notes, range, reading.note]) });
}

/** "Saft einer halben Zitrone" asks for half a lemon. */
function readPartOf(part: string, text: string, notes: readonly string[]): Reading {
  const quantity = readQuantity(inFigures(text));
  if (quantity === undefined) {
    throw new RefusedLine(`No amount is written in "${text}": begin with a number.`);
  }
  const reading = readCounted(quantity, notes);
  if (reading.unit !== "each")
    throw new RefusedLine(`"${text}" is a second measure: write one item on a line.`);
  return { ...reading, note: joinNotes([`${part} von`, reading.note]) };
}

/** "Zitronenzeste" is one; "Minzzweige" and "Gin" are refused. */
function readWithoutAmount(text: string, notes: readonly string[]): Reading {
  const vague = VAGUE.exec(text);
  if (vague !== null) refuseMeasure(vague[0].trim());
  if (STEP.test(text)) {
    throw new RefusedLine(`"${text}" reads like an instruction, not like an amount of an item.`);
  }
  const { qualifiers, rest } = readQualifiers(text);
  if (!isOneAlone(nameIn(rest))) {
    throw new RefusedLine(
      `No amount is written before "${nameIn(rest)}": begin with a number and a unit, or with "top".`,
      { item: nameIn(rest) },
    );
  }
  return readInUnit({ amount: 1, range: null, rest }, "each", rest, [...notes, ...qualifiers]);
}

function readQualifiers(text: string): { qualifiers: string[]; rest: string } {
  const found = QUALIFIER.exec(text);
  if (found === null) return { qualifiers: [], rest: text };
  const more = readQualifiers(text.slice(found[0].length));
  return { qualifiers: [(found[1] ?? "").toLowerCase(), ...more.qualifiers], rest: more.rest };
}

/** Remarks bracketed, and "oder" between names as the reader of English knows it. */
function inShape(text: string): string {
  return withRemarksBracketed(text).replace(OR, "or$1");
}

/** "2 cl Limettensaft frisch gepresst" → "2 cl Limettensaft (frisch gepresst)". */
function withRemarksBracketed(text: string): string {
  return text.replace(REMARK, " ($1)");
}

/** What stands before the first remark. */
function nameIn(text: string): string {
  return (withRemarksBracketed(text).split(/[,(;]|\s-\s/)[0] ?? "").trim();
}

/** Alternatives with the noun they share, and remarks in German again. */
function tidied(reading: Reading): Reading {
  const names = [reading.item ?? "", ...reading.orItems];
  const noun = (names.at(-1) ?? "").split(" ").slice(1).join(" ");
  const [item = "", ...orItems] = names.map((name) =>
    onePiece(BARE.test(name) && noun !== "" ? `${name} ${noun}` : name),
  );
  return { ...reading, item, orItems, note: reading.note?.replace(/(^|\s)or(?=\s)/g, "$1oder") ?? null };
}

function requireGermanName(name: string): void {
  const joint = JOINED.exec(name);
  if (joint !== null) {
    throw new RefusedLine(`"${joint[1]}" joins two items in "${name}": write one item on a line.`);
  }
  requireOnePoured(name);
  requireExplained(name);
  const word = LEFT_OVER.exec(name)?.[1] ?? STEP.exec(name)?.[0].trim();
  if (word === undefined) return;
  throw new RefusedLine(
    `"${word}" in "${name}" is not understood: write only the item's name after the amount.`,
  );
}
