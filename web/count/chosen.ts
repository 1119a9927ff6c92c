import { keep, kept } from "../kept.ts";
import type { Sheet } from "./sheet.ts";

const KEY = "ullage-count-chosen";

type Chosen = { count: string; names: string };

/** Keeps which items a spot count is of, for every screen of it and for a reload without signal; null is all. */
export function choose(count: string, names: string | null): void {
  if (names === null) localStorage.removeItem(KEY);
  else keep(KEY, { count, names } satisfies Chosen);
}

/** The items a count on this device is of, as `choose` was given them; null when it is of all. */
export function chosenFor(count: string): string | null {
  const chosen = kept<Chosen>(KEY);
  return chosen?.count === count ? chosen.names : null;
}

/**
 * The names in "Lime Juice,Quillmere Vodka". A name may hold a comma itself, so neighbours that together are a known
 * name are one; without the known names every comma parts two.
 */
export function namesIn(text: string, known: ReadonlySet<string> = new Set()): string[] {
  const pieces = text.split(",");
  const names: string[] = [];
  for (let from = 0; from < pieces.length; ) {
    let to = pieces.length;
    while (to > from + 1 && !known.has(pieces.slice(from, to).join(",").trim())) to -= 1;
    names.push(pieces.slice(from, to).join(",").trim());
    from = to;
  }
  return names.filter((name) => name !== "");
}

/** The sheet with the chosen items alone, wherever they stand. */
export function onlyChosen(sheet: Sheet, names: string): Sheet {
  const known = new Set(sheet.areas.flatMap((area) => area.items.map(({ item }) => item)));
  const chosen = new Set(namesIn(names, known));
  const areas = sheet.areas.map(({ area, items }) => ({
    area,
    items: items.filter(({ item }) => chosen.has(item)),
  }));
  return { ...sheet, areas: areas.filter(({ items }) => items.length > 0) };
}
