import { cleanLine } from "#engine/specs/text/clean.ts";
import { type Reading, RefusedLine, type SpecTextLine } from "#engine/specs/text/entry.ts";
import { bareForm } from "#engine/specs/text/forms.ts";
import { isGerman, isGermanHeading } from "#engine/specs/text/german/marks.ts";
import { germanJuice, germanWays } from "#engine/specs/text/german/pieces.ts";
import { readGermanLine } from "#engine/specs/text/german/read.ts";
import { juiceMeant } from "#engine/specs/text/juice.ts";
import { type ItemFinder, itemFinder } from "#engine/specs/text/match-item.ts";
import { readExactly } from "#engine/specs/text/printed-line.ts";
import { readLine } from "#engine/specs/text/read-line.ts";

const HEADING =
  /^(?:[\p{L}\s'-]+\s*:|#+\s.*|ingredients?|garnish(?:es)?|method|directions|instructions|preparation|steps|specs?|recipe|for\s+the\s[^:]*:)$/iu;

/**
 * Spec text as people paste it, one entry a line: "¾ oz lime juice, fresh" → 0.75 oz "lime juice", note "fresh".
 *
 * Blank lines and headings ("Ingredients:") give no entry. What cannot be read for certain is refused with `error`
 * set and is never guessed. With `items`, names are looked up among them and come back as they are spelled there;
 * a name not among them is an error that suggests likely ones. Without, they come back as written.
 */
export function readSpecText(text: string, { items }: { items?: readonly string[] } = {}): SpecTextLine[] {
  const find = items === undefined ? undefined : itemFinder(items);
  return text.split(/\r\n|\r|\n/).flatMap((raw, at) => {
    const exact = readExactly(raw.trim());
    if (exact !== undefined)
      return [{ line: at + 1, ...(find === undefined ? exact : withItems(exact, find)) }];
    const line = cleanLine(raw);
    if (line === "" || !/[\p{L}\p{N}]/u.test(line) || HEADING.test(line) || isGermanHeading(line)) return [];
    return [{ line: at + 1, ...readOne(line, find) }];
  });
}

function readOne(line: string, find: ItemFinder | undefined): Reading {
  const isItem = (name: string) => find !== undefined && "item" in find([name]);
  const tongue = isGerman(line) ? GERMAN : ENGLISH;
  try {
    const reading = tongue === GERMAN ? readGermanLine(line, isItem) : readLine(line);
    return find === undefined ? reading : withItems(reading, find, tongue);
  } catch (error) {
    if (!(error instanceof RefusedLine)) throw error;
    const nothing: Reading = { amount: null, unit: null, item: null, orItems: [], note: null, error: null };
    return { ...nothing, ...error.understood, error: error.message };
  }
}

/** What of a language decides which item is meant: other forms of a name, the juice of a fruit, how alternatives are joined. */
type Tongue = {
  formsOf: (name: string) => string[];
  juiceOf: (name: string, unit: Reading["unit"]) => string | null | undefined;
  or: string;
};

const ENGLISH: Tongue = { formsOf: (name) => [name], juiceOf: juiceMeant, or: "or" };
const GERMAN: Tongue = { formsOf: germanWays, juiceOf: germanJuice, or: "oder" };

function withItems(reading: Reading, find: ItemFinder, tongue: Tongue = ENGLISH): Reading {
  const { item, note, orItems } = reading;
  if (item === null) return reading;
  const whole = orItems.length === 0 ? undefined : find([[item, ...orItems].join(` ${tongue.or} `)]);
  if (whole !== undefined && "item" in whole) return { ...reading, item: whole.item, orItems: [] };
  const own = lookUpMeasured(item, waysToTake(item, note), reading, find, tongue);
  const others = orItems.map((name) => lookUpMeasured(name, waysToTake(name, null), reading, find, tongue));
  const missing = [own, ...others].flatMap((found) => ("error" in found ? found.error : []));
  if (missing.length > 0) return { ...reading, error: missing.join(" ") };
  return {
    ...reading,
    item: "item" in own ? own.item : item,
    orItems: others.flatMap((found) => ("item" in found ? found.item : [])),
  };
}

/**
 * "gin, Old Tom" may be on the list as "Old Tom gin" or "Gin (Old Tom)", rather than as "Gin"; half a lemon, "juice of",
 * stays half a lemon and is no half of a lemon juice.
 */
function waysToTake(item: string, note: string | null): string[] {
  const remarks = note === null ? [] : note.split(", ").filter((remark) => !/\b(?:of|von)$/i.test(remark));
  return [
    ...remarks.flatMap((remark) => [`${remark} ${item}`, `${item} ${remark}`]),
    item,
    ...namesInStroke(item),
  ];
}

/** "allspice dram/liqueur" may be on the list under either word. */
function namesInStroke(item: string): string[] {
  const [first = "", ...others] = item.split("/").map((part) => part.trim());
  return others.length === 0 ? [] : [first, ...others.flatMap((other) => bareForm(other, first) ?? [])];
}

/** As `lookUp`; a fruit that is poured is looked up as its juice, and never taken for the fruit that is counted. */
function lookUpMeasured(
  name: string,
  ways: readonly string[],
  { unit }: Reading,
  find: ItemFinder,
  { formsOf, juiceOf }: Tongue,
) {
  const juice = juiceOf(name, unit);
  const all = ways.flatMap(formsOf);
  if (juice === undefined) return lookUp(all, find, name);
  const own = formsOf(name);
  const said = find([...all.filter((way) => !own.includes(way)), ...(juice === null ? [] : [juice])]);
  if ("item" in said) return said;
  if (!("item" in find(own))) return lookUp([juice ?? name], find, juice ?? name);
  const meant = juice === null ? "its juice, a purée or a syrup" : `"${juice}"`;
  return {
    error: `"${name}" is a fruit, and "${unit}" measures what is poured: write the name of ${meant}.`,
  };
}

function lookUp(
  names: readonly string[],
  find: ItemFinder,
  said: string,
): { item: string } | { error: string } {
  const found = find(names);
  if ("item" in found) return found;
  const { suggestions } = found;
  const hint =
    suggestions.length === 0
      ? "Add it to the items."
      : `Did you mean ${suggestions.map((name) => `"${name}"`).join(" or ")}?`;
  return { error: `No item "${said}". ${hint}` };
}
