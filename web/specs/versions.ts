import type { SpecLine } from "#engine/specs/spec.ts";
import type { CatalogueAnswer } from "../answers.ts";

/** The lines of one drink or prep from one day on. */
export type Version = { from: string; lines: SpecLine[] };

/** The versions of a drink or a prep, newest first, their lines in order. */
export function versionsOf(specs: readonly SpecLine[], makes: string): Version[] {
  const byDay = new Map<string, SpecLine[]>();
  for (const line of specs) {
    if (line.makes !== makes) continue;
    byDay.set(line.from, [...(byDay.get(line.from) ?? []), line]);
  }
  return [...byDay]
    .map(([from, lines]) => ({ from, lines: lines.sort((a, b) => a.line - b.line) }))
    .sort((a, b) => b.from.localeCompare(a.from));
}

/** The version in force on a date: the newest that has begun. */
export function versionOn(versions: readonly Version[], date: string): Version | undefined {
  return versions.find(({ from }) => from <= date);
}

/** The drinks and preps whose current version takes an item. */
export function usedBy({ specs, drinks, preps }: CatalogueAnswer, item: string, date: string): string[] {
  const makers = [...new Set([...drinks.map(({ name }) => name), ...preps.map(({ prep }) => prep)])];
  return makers.filter((makes) =>
    versionOn(versionsOf(specs, makes), date)?.lines.some(
      (line) => line.item === item || line.orItems.includes(item),
    ),
  );
}

/** Allergens of a drink or prep by what the book states of it and of all it is made of; the labels decide. */
export function allergensIn(catalogue: CatalogueAnswer, name: string, date: string): string[] {
  const found = new Set<string>();
  const seen = new Set<string>();
  const collect = (makes: string) => {
    if (seen.has(makes)) return;
    seen.add(makes);
    const own = [
      ...catalogue.drinks.filter((drink) => drink.name === makes),
      ...catalogue.items.filter((item) => item.name === makes),
    ];
    for (const { allergens } of own) for (const allergen of allergens) found.add(allergen);
    for (const { source, gives } of catalogue.cuts) if (gives === makes) collect(source);
    for (const { item, orItems } of versionOn(versionsOf(catalogue.specs, makes), date)?.lines ?? []) {
      for (const input of [item, ...orItems]) collect(input);
    }
  };
  collect(name);
  return [...found].sort();
}
