import {
  type Candidate,
  effectNow,
  lasting,
  shareChance,
  type Weighed,
} from "#engine/variance/causes/candidate.ts";
import { expectedBeside, type Scene } from "#engine/variance/causes/scene.ts";

const YIELD_DRIFT = 0.2;
/** Fruit that gives more than the book says is as real and less often so: books are written in good weeks. */
const MORE_WEIGHT = 0.25;

/** Fruit that gives less than its cut says, or more: other pieces go than the drinks and batches asked for. */
export function yieldDrift(scene: Scene): Candidate[] {
  const sources = new Set(scene.facts.book.cuts.map(({ source }) => source));
  const weighed = [...scene.items].flatMap(([item, windows]): Weighed[] => {
    const expected = windows.now.expected.amount;
    if (!sources.has(item) || expected <= 0) return [];
    return ([1, -1] as const).flatMap((sign) =>
      lasting(
        {
          kind: "yield-drift",
          what: item,
          unit: "piece",
          effects: [effectNow(item, sign)],
          size: { kind: "any", max: sign === 1 ? 2 * expected : expected / 2, typical: expected / 6 },
          weight: sign === 1 ? 1 : MORE_WEIGHT,
          check: () =>
            `Press or cut ten pieces of ${item} and measure what they give against the book's yield; the season or the size may have changed${sign === 1 ? "" : ", for the better"}.`,
        },
        expectedBeside(windows),
      ),
    );
  });
  return shareChance(YIELD_DRIFT, weighed);
}
