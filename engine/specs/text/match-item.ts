import { extract, token_sort_ratio } from "fuzzball";
import { foldName } from "#engine/name.ts";
import { singular } from "#engine/specs/text/piece-words.ts";

/** How alike a name must be to be worth suggesting, 0–100. */
const LIKELY = 60;
const SUGGESTIONS = 3;

export type ItemMatch = { item: string } | { suggestions: string[] };

/** The items of a venue, ready to be found by what people write: the ways to take a name, the likeliest first. */
export type ItemFinder = (written: readonly string[]) => ItemMatch;

/**
 * Finds items by name: as written, else without regard to plural, "fresh", accents, hyphens and commas, where that
 * leaves a single item. Only likely names are suggested, never taken.
 *
 * With "Lime juice" listed, "fresh lime juices" → { item: "Lime juice" }; "lime juce" → { suggestions: ["Lime juice"] }.
 */
export function itemFinder(items: readonly string[]): ItemFinder {
  const byName = new Map(items.map((item) => [foldName(item), item]));
  const plainNames = items.map(plainName);
  const byPlainName = new Map<string, Set<string>>();
  for (const [at, item] of items.entries()) {
    const plain = plainNames[at] ?? "";
    byPlainName.set(plain, (byPlainName.get(plain) ?? new Set()).add(item));
  }
  const exactOrPlain = (name: string): string | undefined => {
    const exact = byName.get(foldName(name));
    if (exact !== undefined) return exact;
    const [only, ...others] = byPlainName.get(plainName(name)) ?? [];
    return others.length === 0 ? only : undefined;
  };
  return (written) => {
    for (const name of written) {
      const item = exactOrPlain(name);
      if (item !== undefined) return { item };
    }
    return { suggestions: likely(written.at(-1) ?? "", items, plainNames) };
  };
}

function likely(name: string, items: readonly string[], plainNames: readonly string[]): string[] {
  if (items.length === 0 || name === "") return [];
  const options = {
    scorer: token_sort_ratio,
    limit: SUGGESTIONS,
    cutoff: LIKELY,
    returnObjects: true,
  } as const;
  const found = extract(plainName(name), [...plainNames], { ...options, full_process: false });
  return found.flatMap(({ key }) => items[Number(key)] ?? []);
}

/** A name reduced to what tells items apart. */
function plainName(name: string): string {
  const words = foldName(name)
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replace(/['’.]/g, "")
    .replace(/[^\p{L}\p{N}%:]+/gu, " ")
    .replace(/\b(?:fresh|freshly|squeezed|pressed|of|the)\b/g, " ")
    .trim()
    .split(/\s+/);
  return words.map(singular).join(" ");
}
