import {
  type Candidate,
  effectNow,
  lasting,
  shareChance,
  type Weighed,
} from "#engine/variance/causes/candidate.ts";
import { expectedBeside, type Scene } from "#engine/variance/causes/scene.ts";

const YIELD_DRIFT = 0.2;

/** Fruit that gives less than its cut says: more pieces go than the drinks and batches asked for. */
export function yieldDrift(scene: Scene): Candidate[] {
  const sources = new Set(scene.facts.book.cuts.map(({ source }) => source));
  const weighed = [...scene.items].flatMap(([item, windows]): Weighed[] => {
    const expected = windows.now.expected.amount;
    if (!sources.has(item) || expected <= 0) return [];
    return lasting(
      {
        kind: "yield-drift",
        what: item,
        unit: "piece",
        effects: [effectNow(item, 1)],
        size: { kind: "any", max: 2 * expected, typical: expected / 6 },
        weight: 1,
        check: () =>
          `Press or cut ten pieces of ${item} and measure what they give against the book's yield; the season or the size may have changed.`,
      },
      expectedBeside(windows),
    );
  });
  return shareChance(YIELD_DRIFT, weighed);
}
