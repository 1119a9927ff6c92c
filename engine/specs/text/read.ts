import { cleanLine } from "#engine/specs/text/clean.ts";
import { type Reading, RefusedLine, type SpecTextLine } from "#engine/specs/text/entry.ts";
import { type ItemFinder, itemFinder } from "#engine/specs/text/match-item.ts";
import { readLine } from "#engine/specs/text/read-line.ts";

const HEADING =
  /^(?:ingredients?|for\s+(?:the\s+)?[\p{L}\s-]+|garnish(?:es)?|[\p{L}\s-]+)\s*:$|^(?:#+\s.*|ingredients?|garnish(?:es)?)$/iu;

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
    const line = cleanLine(raw);
    if (line === "" || !/[\p{L}\p{N}]/u.test(line) || HEADING.test(line)) return [];
    return [{ line: at + 1, ...readOne(line, find) }];
  });
}

function readOne(line: string, find: ItemFinder | undefined): Reading {
  try {
    const reading = readLine(line);
    return find === undefined ? reading : withItems(reading, find);
  } catch (error) {
    if (!(error instanceof RefusedLine)) throw error;
    const nothing: Reading = { amount: null, unit: null, item: null, orItems: [], note: null, error: null };
    return { ...nothing, ...error.understood, error: error.message };
  }
}

function withItems(reading: Reading, find: ItemFinder): Reading {
  const { item, note } = reading;
  if (item === null) return reading;
  const inverted = note === null ? [] : note.split(", ").map((part) => `${part} ${item}`);
  const names = [item, ...inverted].map((name) => name);
  const own = lookUp(names, find);
  const others = reading.orItems.map((name) => lookUp([name], find));
  const missing = [own, ...others].flatMap((found) => ("error" in found ? found.error : []));
  if (missing.length > 0) return { ...reading, error: missing.join(" ") };
  return {
    ...reading,
    item: "item" in own ? own.item : item,
    orItems: others.flatMap((found) => ("item" in found ? found.item : [])),
  };
}

function lookUp(names: readonly string[], find: ItemFinder): { item: string } | { error: string } {
  const found = find(names);
  if ("item" in found) return found;
  const { suggestions } = found;
  const hint =
    suggestions.length === 0
      ? "Add it to the items."
      : `Did you mean ${suggestions.map((name) => `"${name}"`).join(" or ")}?`;
  return { error: `No item "${names[0]}". ${hint}` };
}
