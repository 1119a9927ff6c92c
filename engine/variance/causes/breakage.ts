import { itemNamed } from "#engine/catalogue.ts";
import { type Candidate, effectNow, shareChance, type Weighed } from "#engine/variance/causes/candidate.ts";
import { containersOf, inContainers } from "#engine/variance/causes/containers.ts";
import { SETTLED_BY } from "#engine/variance/causes/correction.ts";
import { middleOfItem, type Scene } from "#engine/variance/causes/scene.ts";
import { containerChance } from "#engine/variance/causes/size.ts";

/** Common practice: a bottle a month that nobody wrote down. */
const BREAKAGE = 0.2;

/** A container gone without a note. Fruit and what is weighed does not break. */
export function breakage(scene: Scene): Candidate[] {
  const { catalogue } = scene.facts;
  const cutFrom = new Set(scene.facts.book.cuts.map(({ source }) => source));
  const weighed = [...scene.items.keys()].flatMap((item): Weighed[] => {
    const { base } = itemNamed(catalogue, item);
    if (base === "g" || cutFrom.has(item)) return [];
    return containersOf(scene, item).map((container, index) => ({
      kind: "breakage",
      what: item,
      unit: "container",
      effects: [effectNow(item, container.size)],
      size: { kind: "whole", max: 24, logChance: containerChance({ one: 0.85, perCase: 1 }) },
      weight: (base === "ml" ? 1 : 0.3) * (index === 0 ? 1 : 0.3),
      correct: (size) => ({
        sheet: "losses",
        was: null,
        fact: {
          at: middleOfItem(scene, item),
          kind: "breakage",
          what: item,
          amount: size * container.size,
          unit: base,
          by: SETTLED_BY,
          note: "found by the variance",
        },
        words: `Enters ${inContainers(size, container)} of ${item} as broken.`,
      }),
      check: (size) =>
        `Look at the breakage sheet and the glass bin for ${inContainers(size, container)} of ${item}, and count it again first.`,
    }));
  });
  return shareChance(BREAKAGE, weighed);
}
