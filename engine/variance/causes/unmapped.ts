import { token_set_ratio } from "fuzzball";
import type { Candidate } from "#engine/variance/causes/candidate.ts";
import { type DrinkScene, type Scene, serveBill } from "#engine/variance/causes/scene.ts";

/** That an unmapped ring name is a drink at all, rather than a cover charge. */
const IS_A_DRINK = 0.6;

/**
 * Sales of a ring name that the book does not know: their quantity is known, the drink is the one whose
 * name is nearest and whose items are missing.
 */
export function unmappedSale(scene: Scene): Candidate[] {
  return scene.unmapped
    .filter(({ serves }) => serves.now > 0)
    .flatMap(({ ringName, serves }) => {
      const drinks = [...scene.drinks.values(), ...drinksToCome(scene)].filter(
        ({ perServe }) => perServe.size > 0,
      );
      const weights = drinks.map(({ drink }) => nearness(ringName, drink));
      const sum = weights.reduce((total, weight) => total + weight, 0);
      return drinks.map(
        ({ drink, perServe }, index): Candidate => ({
          kind: "unmapped-sale",
          what: ringName,
          unit: "serve",
          effects: [...perServe].map(([item, amount]) => ({
            item,
            before: (amount * serves.before) / serves.now,
            now: amount,
            after: (amount * serves.after) / serves.now,
          })),
          size: { kind: "around", center: serves.now, relativeSd: 0.02 },
          chance: (IS_A_DRINK * (weights[index] ?? 0)) / sum,
          likely: drink,
          correct: () => ({
            sheet: "ringNames",
            was: null,
            fact: { ringName, soldAs: { kind: "drink", drink }, serves: 1, amount: null, unit: null },
            words: `Maps the ring name "${ringName}" to ${drink}.`,
          }),
          check: () =>
            `Map the ring name "${ringName}" (${serves.now} sold): the numbers fit ${drink}. Then look at this report again.`,
        }),
      );
    });
}

/** A name that shares its words with a drink's is many times likelier to be it. */
function nearness(ringName: string, drink: string): number {
  return Math.exp(token_set_ratio(ringName, drink) / 15);
}

/** Drinks whose first version came too late for these sales, by that version. */
function drinksToCome(scene: Scene): DrinkScene[] {
  const { catalogue } = scene.facts;
  return [...catalogue.specs].flatMap(([drink, versions]) => {
    const first = versions[0];
    if (first === undefined || !catalogue.drinks.has(drink) || scene.drinks.has(drink)) return [];
    const date = first.from;
    const bill = serveBill(scene.facts, drink, date);
    return bill === undefined
      ? []
      : [{ drink, date, serves: { before: 0, now: 0, after: 0 }, perServe: scene.useOf(bill) }];
  });
}
