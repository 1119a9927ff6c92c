import { itemNamed } from "#engine/catalogue.ts";
import {
  type Candidate,
  effectNow,
  lasting,
  shareChance,
  type Weighed,
} from "#engine/variance/causes/candidate.ts";
import { expectedBeside, type Scene } from "#engine/variance/causes/scene.ts";
import { inForce } from "#engine/versions.ts";

const OVER_POUR = 0.25;
/** Free pours run over first; through a jigger they do less, from a measured tap hardly. */
const POUR_WEIGHT = { free: 12, jigger: 1.5, measured: 0.3 } as const;

/** Field studies of mixed drinks found up to two fifths over (Kerr et al. 2008); beyond half it is no pour. */
const MOST_OVER = 0.5;

/** More of an item in the glass than the spec says. */
export function overPour(scene: Scene): Candidate[] {
  const { catalogue } = scene.facts;
  const weighed = [...scene.items].flatMap(([item, windows]): Weighed[] => {
    const { now } = windows;
    const { base, pour } = itemNamed(catalogue, item);
    const expected = now.expected.amount;
    if (base !== "ml" || expected <= 0) return [];
    return lasting(
      {
        kind: "over-pour",
        what: item,
        unit: base,
        effects: [effectNow(item, 1)],
        size: { kind: "any", max: expected * MOST_OVER, typical: expected / 8 },
        weight: POUR_WEIGHT[pour],
        check: () =>
          `Measure ten pours of ${item} into a jug against the spec, and look at its pourer and jigger.`,
      },
      expectedBeside(windows),
    );
  });
  return shareChance(OVER_POUR, weighed);
}

const FOR_ANOTHER = 0.2;
/** An item that the spec itself names as doing as well, one that a modifier swaps in, one of a like name. */
const EITHER_WEIGHT = 40;
const SWAP_WEIGHT = 15;
const ALIKE_WEIGHT = 3;

/** One item poured where the spec says another: as much too much of the one as too little of the other. */
export function pouredForAnother(scene: Scene): Candidate[] {
  const { catalogue } = scene.facts;
  const liquids = [...scene.items].filter(([item]) => itemNamed(catalogue, item).base === "ml");
  const named = namedPairs(scene);
  const weighed = liquids.flatMap(([specified, windows]): Weighed[] => {
    const expected = windows.now.expected.amount;
    if (expected <= 0) return [];
    return liquids.flatMap(([poured]): Weighed[] => {
      const weight = poured === specified ? 0 : pairWeight(scene, named, specified, poured);
      if (weight === 0) return [];
      const candidate: Weighed = {
        kind: "poured-for-another",
        what: [specified, poured],
        unit: "ml",
        effects: [effectNow(specified, -1), effectNow(poured, 1)],
        size: { kind: "any", max: expected, typical: expected / 4 },
        weight,
        check: () =>
          `Look whether ${poured} stands where ${specified} should, and which of the two the spec card in use names.`,
      };
      return weight >= SWAP_WEIGHT / 2 ? lasting(candidate, expectedBeside(windows)) : [candidate];
    });
  });
  return shareChance(FOR_ANOTHER, weighed);
}

function pairWeight(scene: Scene, named: Map<string, number>, specified: string, poured: string): number {
  const { catalogue } = scene.facts;
  const [a, b] = [itemNamed(catalogue, specified), itemNamed(catalogue, poured)];
  const stated = named.get(JSON.stringify([specified, poured]));
  if (stated !== undefined) return stated;
  if (a.category !== b.category) return 0;
  return wordsOf(specified).some((word) => wordsOf(poured).includes(word)) ? ALIKE_WEIGHT : 1;
}

function wordsOf(name: string): string[] {
  return name
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word.length > 2);
}

/** Pairs that the book names: either-of lines of the specs in force, both ways, and swaps of the till. */
function namedPairs(scene: Scene): Map<string, number> {
  const { catalogue, book } = scene.facts;
  const pairs = new Map<string, number>();
  for (const { item, with: swapIn, effect } of book.modifiers) {
    if (effect !== "swap" || item === null || swapIn === null) continue;
    pairs.set(JSON.stringify([item, swapIn]), SWAP_WEIGHT);
  }
  for (const { drink, date, serves } of scene.drinks.values()) {
    if (serves.now <= 0) continue;
    for (const { item, orItems } of inForce(catalogue.specs.get(drink) ?? [], date)?.lines ?? []) {
      for (const other of orItems) {
        pairs.set(JSON.stringify([item, other]), EITHER_WEIGHT);
        pairs.set(JSON.stringify([other, item]), EITHER_WEIGHT / 4);
      }
    }
  }
  return pairs;
}
