import { type Reading, RefusedLine } from "#engine/specs/text/entry.ts";
import { isHouseMeasure, readUnit } from "#engine/specs/text/measure-words.ts";
import { isCountable, pieceItem, pieceWord } from "#engine/specs/text/piece-words.ts";
import { type Quantity, quantityIn } from "#engine/specs/text/quantity.ts";
import { readAfterQuantity } from "#engine/specs/text/read-amount.ts";

/** What may stand between a name and its amount, surest first. */
const SEPARATORS = [
  /\s*:-\s*|\s*(?:(?<!\d)[:=]|[:=](?!\d))\s*|\s+-+\s*|(?<=[\p{L})])-(?=\d)|\s*\.{2,}\s*|\s+x\s*(?=\d)/gu,
  /\s*,\s+|(?<!\d),/g,
  /\s+(?=[\d.])/g,
  /\s*[([]\s*(?=[^()[\]]*[)\]]$)/g,
];

/** "to fill up to", "at least": what stands behind is no plain amount of what stands before. */
const ENDS_OPEN = /\b(?:to|up|of|with|for|per|at|until|least|most|in|into|or|and|plus|fill|the|an?)\s*$/i;

/** What behind a name and its amount is said of them, and names nothing. */
const REMARK = /^[,;(]|^(?:per|for|to|or|as|at|chilled|fresh(?:ly)?|optional)\b/i;

/** "gin 60 ml", "gin: 2 oz", "lime juice - 22.5 ml", "bitters (2 dashes)", "mint leaves x 8"; undefined for other lines. */
export function readItemFirst(text: string): Reading | undefined {
  for (const separator of SEPARATORS) {
    for (const found of text.matchAll(separator)) {
      const name = text.slice(0, found.index);
      const behind = text.slice(found.index + found[0].length);
      if (/^\s*-+\s*$/.test(found[0]) && beginsRange(name, behind)) continue;
      const isBracketed = /[([]/.test(found[0]);
      const line = turned(name, isBracketed ? behind.replace(/[)\]]$/, "") : behind);
      if (line === undefined) continue;
      const isSpaced = /^\s+$/.test(found[0]);
      const isCounted = readUnit(line.rest) === undefined;
      // "mint 8 leaves" counts mint; behind a longer name, with nothing between, it could count anything.
      if (isSpaced && isCounted && name.split(" ").length > 2) return undefined;
      return readAfterQuantity(line, []);
    }
  }
  return undefined;
}

/** What is never numbered on a label: a figure behind it belongs to the amount. */
const UNNUMBERED =
  /\b(?:juice|water|soda|syrup|milk|cream|tea|coffee|cola|beer|wine|ale|lemonade|tonic|sugar)\s+[\d.]+$/i;

/** "soda water 150 - 200 ml" ends in a range; "Oaks 15 - 45 ml" could be of a label, and is refused. */
function beginsRange(name: string, behind: string): boolean {
  const figure = /\s([\d.]+)$/.exec(name)?.[1];
  const quantity = figure === undefined ? undefined : quantityIn(`${figure}-${behind}`);
  if (quantity?.range == null || readUnit(quantity.rest) === undefined) return false;
  if (UNNUMBERED.test(name)) return true;
  throw new RefusedLine(`"${figure} - ${behind}" can be read two ways: write the amount first.`);
}

/** The line with its amount first, if what stands behind the name is an amount and nothing else but a remark on it. */
function turned(name: string, behind: string): Quantity | undefined {
  const guessed = /^(.*\S)\s+(?:about|around|roughly|approx(?:imately)?\.?)$/i.exec(name)?.[1];
  if (guessed !== undefined) return turned(guessed, `about ${behind}`);
  if (!/\p{L}{2}/u.test(name) || /^[\d.]|^(?:an?|the)\s|\([^)]*$/i.test(name) || ENDS_OPEN.test(name))
    return undefined;
  const part = /^(juice|zest|peel)(?:\s+(?:of|from))?\s+(.*)$/i.exec(behind);
  const share = part === null ? undefined : quantityIn(part[2] ?? "");
  if (share?.rest === "") return { ...share, rest: ` ${name} (${part?.[1]?.toLowerCase()} of)` };
  const about = /^(?:about|approx(?:imately)?\.?|ca?\.|circa|around|roughly|~|≈)\s*(?=\d|half\b)/i.exec(
    behind,
  );
  if (about !== null) {
    const line = turned(name, behind.slice(about[0].length));
    return line === undefined ? undefined : { ...line, rest: `${line.rest} (about)` };
  }
  const quantity = quantityIn(behind) ?? bareMeasure(behind);
  if (quantity === undefined) return undefined;
  const unit = readUnit(quantity.rest);
  if (unit === undefined) return turnedCount(name, quantity);
  const after = unit.rest.trim();
  const measure = quantity.rest.slice(0, quantity.rest.length - unit.rest.length);
  const twice = /^(\([^()]*\))\s*(-?)\s*(\D*)$/.exec(after);
  const [, again = "", dash = "", said = ""] = twice ?? [];
  if (isSecondMeasure(again) && (dash !== "" || REMARK.test(said)))
    return { ...quantity, rest: `${measure} ${again} ${name} ${bracketed(said)}` };
  if (after === "" || isSecondMeasure(after)) return { ...quantity, rest: `${measure} ${after} ${name}` };
  return REMARK.test(after) && !holdsMeasure(after)
    ? { ...quantity, rest: `${measure} ${name} ${bracketed(after)}` }
    : undefined;
}

/** "mint: 8 leaves", "egg white: 1", "lime wedges 2". */
function turnedCount(name: string, quantity: Quantity): Quantity | undefined {
  const found = /^\s*(\p{L}*)\s*(.*)$/u.exec(quantity.rest);
  const [, word = "", after = ""] = found ?? [];
  const remark = after === "" ? "" : ` ${bracketed(after)}`;
  if (after !== "" && !/^[,;(]/.test(after)) return undefined;
  const last = name.split(" ").at(-1)?.toLowerCase() ?? "";
  const isSaidTwice = pieceWord(word) !== undefined && pieceWord(last) === pieceWord(word);
  if (word === "" || isSaidTwice) {
    const isCount = pieceItem(name) !== undefined || isCountable(name);
    return isCount ? { ...quantity, rest: ` ${name}${remark}` } : undefined;
  }
  return pieceWord(word) === undefined ? undefined : { ...quantity, rest: ` ${name} ${word}${remark}` };
}

/** "soda water: splash" is one splash. */
function bareMeasure(text: string): Quantity | undefined {
  const unit = readUnit(text);
  if (unit === undefined || !isHouseMeasure(unit) || unit.rest.trim() !== "" || /s$/i.test(text.trim()))
    return undefined;
  return { amount: 1, range: null, rest: text };
}

/** ", vermouth 1 oz": a second item, and no remark. */
function holdsMeasure(text: string): boolean {
  return [...text.matchAll(/(?<![\d./])[\d./]+\s?[A-Za-z]+/g)].some(([measure]) => {
    const quantity = quantityIn(measure);
    return quantity !== undefined && readUnit(quantity.rest) !== undefined;
  });
}

/** "(2 oz)", "/ 2 oz", "to 2 oz": the same amount again, or the end of a range. */
function isSecondMeasure(text: string): boolean {
  const inner = /^\(([^()]*)\)$/.exec(text)?.[1] ?? /^(?:[/|=-]|(?:to|or)\s)\s*(.*)$/i.exec(text)?.[1];
  const quantity = inner === undefined ? undefined : quantityIn(inner);
  return quantity !== undefined && readUnit(quantity.rest)?.rest.trim() === "";
}

function bracketed(remark: string): string {
  const plain = remark.replace(/^[,;\s]+/, "");
  return /^\(/.test(plain) ? plain : `(${plain.replace(/[()]/g, " ").trim()})`;
}
