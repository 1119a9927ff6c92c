import { joinNotes, refuseMeasure, requireName, requireOneThing } from "#engine/specs/text/checks.ts";
import { type Reading, RefusedLine } from "#engine/specs/text/entry.ts";
import { readItemFirst } from "#engine/specs/text/item-first.ts";
import { readItemText } from "#engine/specs/text/item-text.ts";
import { isHouseMeasure, readUnit, vagueMeasure } from "#engine/specs/text/measure-words.ts";
import { pieceItem } from "#engine/specs/text/piece-words.ts";
import { type Quantity, quantityIn, readQuantity } from "#engine/specs/text/quantity.ts";
import { readAfterQuantity } from "#engine/specs/text/read-amount.ts";

/** "Top with …", "fill up with …". */
const FIRST =
  /^(?:(?:to\s+)?(?:top(?:ped|ping(?=\s+of\b))?(?:\s+it)?(?:[\s-]?(?:up|off))?|fill(?:ed)?(?:\s+it)?(?:\s+(?:up|to\s+top))?|lengthen(?:ed)?|(?:complete|finish)(?=\s+with\b))(?:\s+(?:the\s+)?(?:glass|drink|rest|remainder))?(?:\s+(?:up\s+)?to\s+(?:the\s+)?(?:top|brim|rim))?(?:\s+(?:with|by|of))?)(?:\s*[:,-]\s*|\s+)(?:an?\s+)?/i;
/** "… to top", "… (top up)". */
const LAST =
  /(?<!\b(?:over|on|the|of|at|over the|or))(?:\s*[,;(:-]\s*|\s+)\(?\s*(?:enough\s+)?(?:(?:to|for)?\s*(?:top(?:[\s-]?(?:up|off))?|fill(?:\s+up)?)|(?:to|for)\s+topping(?:[\s-]?(?:up|off))?)(?:\s+(?:with|up|off|(?:the\s+)?(?:glass|drink)))?\s*\)?$/i;
/** Not poured to fill a glass up, whatever the line says. */
const NOT_A_TOP =
  /\b(?:ice|grated|grating|ground|shaved|nutmeg|cinnamon|powder|dust|foam)\b(?!\s*(?:cream|tea|wine|beer))/i;

/** A line that fills the glass up, or undefined for any other line. */
export function readTop(text: string, notes: readonly string[]): Reading | undefined {
  const first = FIRST.exec(text);
  if (first !== null) return readTopped(text.slice(first[0].length), notes);
  const { body, remark } = splitLastBracket(text);
  const last = LAST.exec(text) ?? LAST.exec(body);
  if (last === null || /\([^)]*$/.test(text.slice(0, last.index))) return undefined;
  const isWhole = last.index + last[0].length === text.length;
  return readTopped(`${text.slice(0, last.index)}${isWhole ? "" : ` ${remark}`}`, notes);
}

/** "club soda, to top (about 1 ounce)", "cava, to top - any dry one": what is in the bracket, or behind the dash, is a remark. */
function splitLastBracket(text: string): { body: string; remark: string } {
  const found = /\s*(\([^()]*\))$/.exec(text) ?? /\s+-\s+([^()]*)$/.exec(text);
  if (found === null) return { body: text, remark: "" };
  const remark = found[1] ?? "";
  return { body: text.slice(0, found.index), remark: remark.startsWith("(") ? remark : `(${remark})` };
}

/** "soda water (60 ml)" says how much; "(about 5 oz)" leaves it to the glass. */
function measureInBrackets(text: string): Quantity | undefined {
  const [, name = "", inside = ""] = /^([^()]*\p{L})[.,]?\s*\(([^()]*)\)$/u.exec(text) ?? [];
  const quantity = quantityIn(inside);
  const unit = quantity === undefined ? undefined : readUnit(quantity.rest);
  if (quantity === undefined || unit?.rest.trim() !== "") return undefined;
  return { ...quantity, rest: `${quantity.rest} ${name}` };
}

/** "top with soda" has no amount; "top with 2 oz soda" has one, and is a measure. */
function readTopped(text: string, notes: readonly string[]): Reading {
  const quantity = readQuantity(text);
  if (quantity !== undefined) return readAfterQuantity(quantity, [...notes, "top"]);
  const stated = measureInBrackets(text);
  if (stated !== undefined) return readAfterQuantity(stated, [...notes, "top"]);
  const behind = text.includes("(") ? undefined : readItemFirst(text);
  if (behind !== undefined) return { ...behind, note: joinNotes([...notes, "top", behind.note]) };
  const unit = readUnit(text);
  if (unit !== undefined && isHouseMeasure(unit)) {
    return readAfterQuantity({ amount: 1, range: null, rest: text }, [...notes, "top"]);
  }
  const { name, orItems, notes: remarks } = readItemText(text.replace(/^(?:enough|some|plenty of)\s+/i, ""));
  requireName(name, text);
  const vague = vagueMeasure(name);
  if (vague !== undefined && /\sof\s/i.test(name)) refuseMeasure(vague, { item: null });
  if (NOT_A_TOP.test(name) || pieceItem(name) !== undefined) {
    throw new RefusedLine(`"${name}" does not fill a glass up: write its amount.`, { item: name });
  }
  requireOneThing(name);
  return {
    amount: null,
    unit: "top",
    item: name,
    orItems,
    note: joinNotes([...notes, ...remarks]),
    error: null,
  };
}
