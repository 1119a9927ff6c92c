import { token_sort_ratio } from "fuzzball";
import type { Catalogue } from "#engine/catalogue.ts";

/** Something a ring name may stand for; `score` 0–100. */
export type Meaning = { name: string; kind: "drink" | "item"; score: number };

const LIKELY = 55;
const SHOWN = 5;

/**
 * What an unknown ring name may mean, likeliest first: drinks and items by how alike the names are,
 * whatever the order of their words. Never taken without a person's yes.
 */
export function likelyMeanings(catalogue: Catalogue, ringName: string): Meaning[] {
  const drinks = [...catalogue.drinks.keys()].map((name) => ({ name, kind: "drink" as const }));
  const items = [...catalogue.items.keys()].map((name) => ({ name, kind: "item" as const }));
  return [...drinks, ...items]
    .map((candidate) => ({ ...candidate, score: token_sort_ratio(ringName, candidate.name) }))
    .filter(({ score }) => score >= LIKELY)
    .sort((a, b) => b.score - a.score || (a.name < b.name ? -1 : 1))
    .slice(0, SHOWN);
}
