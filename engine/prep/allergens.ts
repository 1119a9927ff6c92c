import type { Catalogue } from "#engine/catalogue.ts";
import { foldName } from "#engine/name.ts";
import type { BusinessDate } from "#engine/time.ts";
import { inForce } from "#engine/versions.ts";

/** One allergen and the items that bring it in. */
export type AllergenFrom = { allergen: string; from: string[] };

/** What the sheets say of a drink or an item. It is only as complete as they are: the labels decide. */
export type Allergens = {
  contains: AllergenFrom[];
  /** By an alternative of an "either of" line. */
  mayContain: AllergenFrom[];
  /** One line for a card or label. */
  text: string;
};

/**
 * The allergens of a drink, prep or item on a date: its own and those of all it is made of, at any depth.
 *
 * Nothing is inferred: what no sheet states is not listed, and the text says to check the labels.
 * A sour of almond syrup made of almonds → contains "almonds", from the almonds.
 */
export function allergensOf(catalogue: Catalogue, name: string, date: BusinessDate): Allergens {
  const found: Found = { contains: new Map(), mayContain: new Map() };
  collect(catalogue, name, date, { isSure: true, path: [], found });
  for (const key of found.contains.keys()) found.mayContain.delete(key);
  const contains = [...found.contains.values()];
  const mayContain = [...found.mayContain.values()];
  return { contains, mayContain, text: allergenText({ contains, mayContain }) };
}

type Found = { contains: Map<string, AllergenFrom>; mayContain: Map<string, AllergenFrom> };

type Walk = { isSure: boolean; path: readonly string[]; found: Found };

function collect(catalogue: Catalogue, name: string, date: BusinessDate, walk: Walk): void {
  if (walk.path.includes(name)) return;
  const own = [
    ...(catalogue.drinks.get(name)?.allergens ?? []),
    ...(catalogue.items.get(name)?.allergens ?? []),
  ];
  for (const allergen of own) add(walk.isSure ? walk.found.contains : walk.found.mayContain, allergen, name);
  const inner = { ...walk, path: [...walk.path, name] };
  const cut = inForce(catalogue.cuts.get(name) ?? [], date);
  if (cut !== undefined) collect(catalogue, cut.source, date, inner);
  for (const { item, orItems } of inForce(catalogue.specs.get(name) ?? [], date)?.lines ?? []) {
    collect(catalogue, item, date, inner);
    for (const other of orItems) collect(catalogue, other, date, { ...inner, isSure: false });
  }
}

function add(found: Map<string, AllergenFrom>, allergen: string, from: string): void {
  const key = foldName(allergen);
  const held = found.get(key);
  if (held === undefined) found.set(key, { allergen, from: [from] });
  else if (!held.from.includes(from)) held.from.push(from);
}

/** The same for a small label on a container, which guests' questions are answered from. */
export function allergensOnLabel({
  contains,
  mayContain,
}: Pick<Allergens, "contains" | "mayContain">): string {
  return wordsOf({ contains, mayContain, none: "No allergens recorded.", care: "Check before serving." });
}

function allergenText(found: Pick<Allergens, "contains" | "mayContain">): string {
  const care = "Check the labels of everything that goes in.";
  return wordsOf({ ...found, none: "No allergens are recorded.", care });
}

function wordsOf({
  contains,
  mayContain,
  none,
  care,
}: Pick<Allergens, "contains" | "mayContain"> & { none: string; care: string }): string {
  const list = (found: readonly AllergenFrom[]) => found.map(({ allergen }) => allergen).join(", ");
  const parts = [
    contains.length > 0 ? `Contains: ${list(contains)}.` : "",
    mayContain.length > 0 ? `May contain: ${list(mayContain)}.` : "",
    contains.length + mayContain.length === 0 ? none : "",
    care,
  ];
  return parts.filter((part) => part !== "").join(" ");
}
