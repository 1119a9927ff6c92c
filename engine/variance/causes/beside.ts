import type { Candidate, Effect } from "#engine/variance/causes/candidate.ts";
import type { Scene } from "#engine/variance/causes/scene.ts";

/** Trouble in a window beside: it is allowed for, and not reported. */
export type Trouble = Pick<Candidate, "effects" | "size" | "chance"> & { key: string };

/** Chance of trouble with one item in a window beside, whatever its cause. */
const ITEM_CHANCE = 0.03;
/** Causes rarer than this are left to the items' own chance. */
const LEAST_CHANCE = 5e-4;

/**
 * What may have gone wrong in the windows before and after, so that it is not taken for a sign of a wrong
 * count or of a habit: any trouble of one item, and the likelier causes that speak of several.
 */
export function troubleBeside(scene: Scene, candidates: readonly Candidate[]): Trouble[] {
  return [...itemTrouble(scene), ...causesBeside(scene, candidates)];
}

function itemTrouble(scene: Scene): Trouble[] {
  return [...scene.items].flatMap(([item, windows]) =>
    (["before", "after"] as const).flatMap((when) => {
      const period = windows[when];
      if (period === undefined) return [];
      return [1, -1].map((sign) => ({
        effects: [{ item, before: 0, now: 0, after: 0, [when]: sign }],
        size: { kind: "any" as const, max: Number.MAX_VALUE, typical: Math.max(period.sd * 4, 1) },
        chance: ITEM_CHANCE,
        key: JSON.stringify([when, item]),
      }));
    }),
  );
}

function causesBeside(scene: Scene, candidates: readonly Candidate[]): Trouble[] {
  const several = candidates.filter(
    ({ effects, chance }) => effects.length > 1 && chance >= LEAST_CHANCE && effects.every(isNowAlone),
  );
  return (["before", "after"] as const).flatMap((when) => {
    const isKnown = ({ item }: Effect) => scene.items.get(item)?.[when] !== undefined;
    return several
      .filter(({ effects }) => effects.every(isKnown))
      .map(({ kind, what, effects, size, chance }) => ({
        effects: effects.map(({ item, now }) => ({ item, before: 0, now: 0, after: 0, [when]: now })),
        size,
        chance,
        key: JSON.stringify([when, kind, what]),
      }));
  });
}

function isNowAlone({ before, after }: Effect): boolean {
  return before === 0 && after === 0;
}
