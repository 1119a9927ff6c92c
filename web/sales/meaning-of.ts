import type { RingName } from "#engine/sales/ring.ts";
import { formatNumber, withUnit } from "../format.ts";
import { unitWord } from "../prep/amounts.ts";
import { say } from "../texts/say.ts";
import type { Meaning, UnmappedName } from "./sales-queries.ts";

/** What a ring name means, in words: "Negroni, 2 serves"; "House gin, 25 ml". */
export function meaningWords({ soldAs, serves, amount, unit }: RingName): string {
  if (soldAs.kind === "ignore") return say("sales.meansNothing");
  if (soldAs.kind === "drink")
    return serves === 1
      ? soldAs.drink
      : say("sales.drinkServes", { drink: soldAs.drink, serves: formatNumber(serves, digits(serves)) });
  if (amount === null) return say("sales.itemContainer", { item: soldAs.item });
  const number = formatNumber(amount, digits(amount));
  return `${soldAs.item}, ${unit === null ? number : withUnit(number, unitWord(unit))}`;
}

function digits(value: number): number {
  return value % 1 === 0 ? 0 : 1;
}

/** A likely meaning as a fact to be saved; undefined where the name leaves open how many serves it is. */
export function asRingName({ ringName }: UnmappedName, meaning: Meaning): RingName | undefined {
  const { name, kind, serves } = meaning;
  if (serves === null) return undefined;
  const soldAs = kind === "drink" ? { kind, drink: name } : { kind, item: name };
  return { ringName, soldAs, serves, amount: null, unit: null };
}

export function asIgnored({ ringName }: UnmappedName): RingName {
  return { ringName, soldAs: { kind: "ignore" }, serves: 1, amount: null, unit: null };
}

/** The names whose likeliest meaning reaches a score and leaves nothing open, with that meaning. */
export function acceptable(names: readonly UnmappedName[], scoreLeast: number): RingName[] {
  return names.flatMap((name) => {
    const [best] = name.suggestions;
    if (best === undefined || best.score < scoreLeast || name.reason === "no-version") return [];
    return asRingName(name, best) ?? [];
  });
}
