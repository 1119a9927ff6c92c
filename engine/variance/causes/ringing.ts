import { foldName } from "#engine/name.ts";
import {
  type Candidate,
  type Effect,
  effectNow,
  shareChance,
  type Weighed,
} from "#engine/variance/causes/candidate.ts";
import { SETTLED_BY } from "#engine/variance/causes/correction.ts";
import { type DrinkScene, middleOfScene, type Scene } from "#engine/variance/causes/scene.ts";

/** What so many serves of a drink add to each item's use between the two counts. */
export function serveEffects(perServe: Map<string, number>): Effect[] {
  return [...perServe].map(([item, amount]) => effectNow(item, amount));
}

const NOT_RUNG = 0.2;
/** A whole party on one slip; how unlikely so many are is said by the usual size. */
const MOST_NOT_RUNG = 60;

/** Drinks made but not rung: all that goes into them is gone, in the spec's proportions. */
export function notRung(scene: Scene): Candidate[] {
  const weighed = [...scene.drinks.values()].flatMap(({ drink, serves, perServe }): Weighed[] => {
    if (serves.now <= 0 || perServe.size === 0) return [];
    return [
      {
        kind: "not-rung",
        what: drink,
        unit: "serve",
        effects: serveEffects(perServe),
        size: {
          kind: "any",
          max: Math.max(MOST_NOT_RUNG, 2 * serves.now),
          typical: Math.max(3, serves.now / 6),
        },
        weight: Math.sqrt(serves.now),
        correct: (size) => ({
          sheet: "losses",
          was: null,
          fact: {
            at: middleOfScene(scene),
            kind: "comp",
            what: drink,
            amount: size,
            unit: "serve",
            by: SETTLED_BY,
            note: "made but not rung; found by the variance",
          },
          words: `Enters ${size} serves of ${drink} as made but not rung.`,
        }),
        check: () =>
          `Compare the slips and the comps, tabs and staff drinks of these days with the till for ${drink}: some may have been made without being rung.`,
      },
    ];
  });
  return shareChance(NOT_RUNG, weighed);
}

const RUNG_FOR = 0.2;
/** Buttons side by side, and names that share a word, are pressed for each other. */
const NEAR_WEIGHT = 4;

/** One drink rung while another was made: the one's items are left over, the other's are gone. */
export function rungForAnother(scene: Scene): Candidate[] {
  const drinks = [...scene.drinks.values()].filter(({ perServe }) => perServe.size > 0);
  const places = placesOf(drinks);
  const weighed = drinks.flatMap((rung) =>
    drinks.flatMap((made): Weighed[] => {
      if (rung === made || rung.serves.now <= 0) return [];
      const effects = difference(rung.perServe, made.perServe);
      if (effects.length === 0) return [];
      return [
        {
          kind: "rung-for-another",
          what: [rung.drink, made.drink],
          unit: "serve",
          effects,
          size: { kind: "any", max: rung.serves.now, typical: Math.max(3, rung.serves.now / 5) },
          weight:
            Math.sqrt(rung.serves.now * Math.max(1, made.serves.now)) *
            (isNear(places, rung, made) ? NEAR_WEIGHT : 1),
          check: () =>
            `Look at the till's buttons for ${rung.drink} and ${made.drink}, and at slips of the busy hours: the one may be rung where the other is made.`,
        },
      ];
    }),
  );
  return shareChance(RUNG_FOR, weighed);
}

/** What one serve made instead of another changes of each item's use. */
export function difference(instead: Map<string, number>, made: Map<string, number>): Effect[] {
  const items = new Set([...instead.keys(), ...made.keys()]);
  return [...items].flatMap((item) => {
    const amount = (made.get(item) ?? 0) - (instead.get(item) ?? 0);
    return Math.abs(amount) > 1e-9 ? [effectNow(item, amount)] : [];
  });
}

/** Each drink's place in the alphabet, as tills lay out their buttons. */
function placesOf(drinks: readonly DrinkScene[]): Map<string, number> {
  const names = drinks.map(({ drink }) => foldName(drink)).sort();
  return new Map(names.map((name, place) => [name, place]));
}

function isNear(places: Map<string, number>, a: DrinkScene, b: DrinkScene): boolean {
  const [first, second] = [foldName(a.drink), foldName(b.drink)];
  if (Math.abs((places.get(first) ?? 0) - (places.get(second) ?? 0)) === 1) return true;
  return first.split(" ").some((word) => word.length > 3 && second.split(" ").includes(word));
}
