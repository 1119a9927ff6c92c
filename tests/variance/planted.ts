import type { Unit } from "#engine/measure/units.ts";
import type { Fault, FaultKind } from "#tests/simulate/faults.ts";
import { randomStream } from "#tests/simulate/random.ts";
import type { ReadBar } from "./simulated.ts";

/** Faults of a kind that a clean bar's week has room for, drawn by a seed; undefined where it has none. */
export function drawFault(kind: FaultKind, bar: ReadBar, week: number, seed: number): Fault | undefined {
  const random = randomStream(seed, `fault ${kind}`);
  const { facts } = bar;
  const { catalogue, book } = facts;
  const truth = bar.truth.weeks[week - 1];
  if (truth === undefined) throw new Error(`There is no week ${week}.`);
  const pick = <T>(list: readonly T[]): T | undefined => (list.length === 0 ? undefined : random.pick(list));
  const serves = new Map<string, number>();
  for (const [date, drinks] of Object.entries(bar.truth.serves)) {
    if (date < truth.from || date > truth.to) continue;
    for (const [drink, count] of Object.entries(drinks)) {
      if (catalogue.drinks.has(drink)) serves.set(drink, (serves.get(drink) ?? 0) + count);
    }
  }
  const sold = [...serves].filter(([, count]) => count >= 25).map(([drink]) => drink);
  const delivered = book.deliveries
    .filter(({ at, item }) => {
      const date = at.slice(0, 10);
      return date >= truth.from && date <= truth.to && catalogue.items.get(item)?.base === "ml";
    })
    .map(({ item }) => item);
  const bottles = [...catalogue.items.values()]
    .filter(({ name, base }) => {
      const pack = catalogue.packs.get(name)?.[0];
      const size = pack === undefined ? 0 : pack.amount;
      return (
        base === "ml" &&
        size > 0 &&
        (truth.items[name]?.closing ?? 0) > 2500 &&
        (truth.expected[name] ?? 0) > 0 &&
        // One bottle of what is topped up by eye shows in no count.
        !bar.truth.toppedUp.includes(name)
      );
    })
    .map(({ name }) => name);
  const lineOf = (drink: string) =>
    catalogue.specs.get(drink)?.findLast(({ from }) => from <= truth.from)?.lines ?? [];
  switch (kind) {
    case "delivery-not-entered":
    case "delivery-entered-twice": {
      const item = pick(delivered);
      return item === undefined ? undefined : { kind, week, item };
    }
    case "delivery-short": {
      const item = pick(delivered);
      return item === undefined ? undefined : { kind, week, item, containers: 1 };
    }
    case "wrong-pack-size": {
      const item = pick(delivered.filter((name) => (catalogue.packs.get(name)?.length ?? 0) > 1));
      const pack = item === undefined ? undefined : catalogue.packs.get(item)?.at(-1)?.pack;
      return item !== undefined && pack !== undefined ? { kind, week, item, pack } : undefined;
    }
    case "container-miscounted": {
      const item = pick(bottles);
      return item === undefined
        ? undefined
        : { kind, week, item, sign: random.chance(0.5) ? 1 : -1, containers: 1 };
    }
    case "breakage": {
      const item = pick(bottles);
      return item === undefined ? undefined : { kind, week, item, containers: 1 };
    }
    case "area-skipped": {
      const area = pick([...new Set(book.areas.map(({ area }) => area))]);
      return area === undefined ? undefined : { kind, week, area };
    }
    case "over-pour": {
      const items = [...catalogue.items.values()].filter(
        ({ name, pour, base }) => pour === "free" && base === "ml" && (truth.expected[name] ?? 0) > 500,
      );
      const item = pick(items)?.name;
      return item === undefined ? undefined : { kind, week, untilWeek: week, item, share: 0.25 };
    }
    case "poured-for-another": {
      const either = sold.flatMap((drink) =>
        lineOf(drink).flatMap(({ item, orItems }) =>
          orItems.map((poured) => ({ drink, spec: item, poured })),
        ),
      );
      const found = pick(either);
      return found === undefined ? undefined : { kind, week, ...found, share: 0.6 };
    }
    case "rung-for-another": {
      const [rung, made] = [pick(sold), pick(sold)];
      return rung !== undefined && made !== undefined && rung !== made
        ? { kind, week, rung, made, serves: 15 }
        : undefined;
    }
    case "not-rung": {
      const drink = pick(sold);
      return drink === undefined ? undefined : { kind, week, drink, serves: 14 };
    }
    case "older-spec": {
      const drink = pick(
        sold.filter(
          (name) => (catalogue.specs.get(name) ?? []).filter(({ from }) => from <= truth.from).length > 1,
        ),
      );
      return drink === undefined ? undefined : { kind, week, untilWeek: week, drink };
    }
    case "unit-slip": {
      const lines = sold.flatMap((drink) =>
        lineOf(drink).flatMap(({ item, unit }): { drink: string; item: string; unit: Unit }[] =>
          unit === "dash"
            ? [{ drink, item, unit: "barspoon" }]
            : unit === "barspoon"
              ? [{ drink, item, unit: "dash" }]
              : [],
        ),
      );
      const found = pick(lines);
      return found === undefined ? undefined : { kind, ...found };
    }
    case "batch-not-logged":
    case "batch-thrown-out": {
      const prep = pick(
        book.batches
          .filter(({ at }) => at.slice(0, 10) >= truth.from && at.slice(0, 10) <= truth.to)
          .map(({ prep }) => prep),
      );
      return prep === undefined ? undefined : { kind, week, prep };
    }
    case "yield-drift": {
      const fruit = pick(
        [...new Set(book.cuts.map(({ source }) => source))].filter(
          (name) => (truth.expected[name] ?? 0) > 60,
        ),
      );
      return fruit === undefined ? undefined : { kind, week, untilWeek: week, fruit, factor: 0.8 };
    }
    case "unmapped-sale": {
      const drink = pick(sold);
      return drink === undefined
        ? undefined
        : { kind, week, drink, ringName: `House ${drink.split(" ").at(-1)} Special`, serves: 14 };
    }
  }
}

/** Whether a cause names what was planted. */
export function isSame(what: string | [string, string], planted: string | [string, string]): boolean {
  return JSON.stringify(what) === JSON.stringify(planted);
}
