import type { Unit } from "#engine/measure/units.ts";
import type { Fault, FaultKind } from "#tests/simulate/faults.ts";
import { type Random, randomStream } from "#tests/simulate/random.ts";
import type { ReadBar } from "./simulated.ts";

/** Trouble of a kind, of a random size, that a clean bar's week has room for; undefined where it has none. */
export function drawFault(kind: FaultKind, bar: ReadBar, week: number, seed: number): Fault | undefined {
  const random = randomStream(seed, `fault ${kind}`);
  return DRAWS[kind](roomIn(bar, week), random, week);
}

/** What a week of a clean bar has that trouble can befall. */
type Room = {
  bar: ReadBar;
  truth: ReadBar["truth"]["weeks"][number];
  /** Drinks that sold at least a few dozen. */
  sold: string[];
  /** Liquids that came. */
  delivered: string[];
  /** Liquids by the container, with some full ones at the end. */
  bottles: string[];
  linesOf: (makes: string) => readonly SpecLine[];
};
type SpecLine = { item: string; amount: number | null; unit: Unit | "top"; orItems: readonly string[] };

const LEAST_SOLD = 20;
const LEAST_BOTTLES = 3;

function roomIn(bar: ReadBar, week: number): Room {
  const { catalogue, book } = bar.facts;
  const truth = bar.truth.weeks[week - 1];
  if (truth === undefined) throw new Error(`There is no week ${week}.`);
  const isThen = (at: string) => at.slice(0, 10) >= truth.from && at.slice(0, 10) <= truth.to;
  const serves = new Map<string, number>();
  for (const [date, drinks] of Object.entries(bar.truth.serves)) {
    if (!isThen(date)) continue;
    for (const [drink, count] of Object.entries(drinks)) {
      if (catalogue.drinks.has(drink)) serves.set(drink, (serves.get(drink) ?? 0) + count);
    }
  }
  const isLiquid = (name: string) => catalogue.items.get(name)?.base === "ml";
  // One bottle of what is topped up by eye shows in no count.
  const isSure = (name: string) => isLiquid(name) && !bar.truth.toppedUp.includes(name);
  const sizeOf = (name: string) => {
    const pack = catalogue.packs.get(name)?.[0];
    return pack === undefined ? 0 : pack.amount * (pack.unit === "l" ? 1000 : 1);
  };
  return {
    bar,
    truth,
    sold: [...serves].filter(([, count]) => count >= LEAST_SOLD).map(([drink]) => drink),
    delivered: book.deliveries.filter(({ at, item }) => isThen(at) && isLiquid(item)).map(({ item }) => item),
    bottles: [...catalogue.items.keys()].filter(
      (name) =>
        isSure(name) &&
        sizeOf(name) > 0 &&
        (truth.items[name]?.closing ?? 0) > LEAST_BOTTLES * sizeOf(name) &&
        (truth.expected[name] ?? 0) > 0,
    ),
    linesOf: (makes) => catalogue.specs.get(makes)?.findLast(({ from }) => from <= truth.from)?.lines ?? [],
  };
}

function pick<T>(list: readonly T[], random: Random): T | undefined {
  return list.length === 0 ? undefined : random.pick(list);
}

type Draw = (room: Room, random: Random, week: number) => Fault | undefined;

/** One container, now and then two. */
const few = (random: Random) => (random.chance(0.7) ? 1 : 2);
const SERVES = { least: 8, most: 25 };
const serves = (random: Random) => random.whole(SERVES.least, SERVES.most);

const DRAWS: { [kind in FaultKind]: Draw } = {
  "delivery-not-entered": ({ delivered }, random, week) => {
    const item = pick(delivered, random);
    return item === undefined ? undefined : { kind: "delivery-not-entered", week, item };
  },
  "delivery-entered-twice": ({ delivered }, random, week) => {
    const item = pick(delivered, random);
    return item === undefined ? undefined : { kind: "delivery-entered-twice", week, item };
  },
  "delivery-short": ({ delivered }, random, week) => {
    const item = pick(delivered, random);
    return item === undefined ? undefined : { kind: "delivery-short", week, item, containers: few(random) };
  },
  "wrong-pack-size": ({ bar, delivered }, random, week) => {
    const { packs } = bar.facts.catalogue;
    const item = pick(
      delivered.filter((name) => (packs.get(name)?.length ?? 0) > 1),
      random,
    );
    const pack = item === undefined ? undefined : packs.get(item)?.at(-1)?.pack;
    return item === undefined || pack === undefined
      ? undefined
      : { kind: "wrong-pack-size", week, item, pack };
  },
  "container-miscounted": ({ bar, truth, bottles }, random, week) => {
    const item = pick(bottles, random);
    if (item === undefined) return undefined;
    const containers = few(random);
    // The reserve is counted last; what is not there cannot be overlooked.
    const rows = bar.facts.book.counts.filter((row) => row.count === truth.closingCount && row.item === item);
    const canMiss = (rows.at(-1)?.full ?? 0) >= containers;
    const sign = canMiss && random.chance(0.5) ? -1 : 1;
    return { kind: "container-miscounted", week, item, sign, containers };
  },
  breakage: ({ bottles }, random, week) => {
    const item = pick(bottles, random);
    return item === undefined ? undefined : { kind: "breakage", week, item, containers: few(random) };
  },
  "area-skipped": ({ bar }, random, week) => {
    const area = pick([...new Set(bar.facts.book.areas.map((row) => row.area))], random);
    return area === undefined ? undefined : { kind: "area-skipped", week, area };
  },
  "over-pour": ({ bar, truth }, random, week) => {
    const item = pick(
      [...bar.facts.catalogue.items.values()].filter(
        ({ name, pour, base }) => pour === "free" && base === "ml" && (truth.expected[name] ?? 0) > 500,
      ),
      random,
    )?.name;
    const share = 0.1 + 0.25 * random.uniform();
    return item === undefined ? undefined : { kind: "over-pour", week, untilWeek: week, item, share };
  },
  "poured-for-another": ({ sold, linesOf }, random, week) => {
    const found = pick(
      sold.flatMap((drink) =>
        linesOf(drink).flatMap(({ item, orItems }) =>
          orItems.map((poured) => ({ drink, spec: item, poured })),
        ),
      ),
      random,
    );
    const share = 0.4 + 0.6 * random.uniform();
    return found === undefined ? undefined : { kind: "poured-for-another", week, ...found, share };
  },
  "rung-for-another": ({ sold }, random, week) => {
    const [rung, made] = [pick(sold, random), pick(sold, random)];
    return rung === undefined || made === undefined || rung === made
      ? undefined
      : { kind: "rung-for-another", week, rung, made, serves: serves(random) };
  },
  "not-rung": ({ sold }, random, week) => {
    const drink = pick(sold, random);
    return drink === undefined ? undefined : { kind: "not-rung", week, drink, serves: serves(random) };
  },
  "older-spec": ({ bar, truth, sold }, random, week) => {
    const begun = (name: string) =>
      (bar.facts.catalogue.specs.get(name) ?? []).filter(({ from }) => from <= truth.from).length;
    const drink = pick(
      sold.filter((name) => begun(name) > 1),
      random,
    );
    return drink === undefined ? undefined : { kind: "older-spec", week, untilWeek: week, drink };
  },
  "unit-slip": ({ sold, linesOf, bar, truth }, random) => {
    const made = bar.facts.book.batches
      .filter(({ at }) => at.slice(0, 10) >= truth.from && at.slice(0, 10) <= truth.to)
      .map(({ prep }) => prep);
    const slips = (makes: string) =>
      linesOf(makes).flatMap(({ item, unit }) =>
        (SLIPS[unit] ?? []).map((wrong) => ({ drink: makes, item, unit: wrong })),
      );
    const found = pick([...sold, ...new Set(made)].flatMap(slips), random);
    return found === undefined ? undefined : { kind: "unit-slip", ...found };
  },
  "batch-not-logged": ({ bar, truth }, random, week) => {
    const prep = pick(batchesOf(bar, truth), random);
    return prep === undefined ? undefined : { kind: "batch-not-logged", week, prep };
  },
  "batch-thrown-out": ({ bar, truth }, random, week) => {
    const prep = pick(batchesOf(bar, truth), random);
    return prep === undefined ? undefined : { kind: "batch-thrown-out", week, prep };
  },
  "yield-drift": ({ bar, truth }, random, week) => {
    const fruit = pick(
      [...new Set(bar.facts.book.cuts.map(({ source }) => source))].filter(
        (name) => (truth.expected[name] ?? 0) > 40,
      ),
      random,
    );
    const factor = 0.7 + 0.2 * random.uniform();
    return fruit === undefined ? undefined : { kind: "yield-drift", week, untilWeek: week, fruit, factor };
  },
  "unmapped-sale": ({ sold }, random, week) => {
    const drink = pick(sold, random);
    if (drink === undefined) return undefined;
    const ringName = `House ${drink.split(" ").at(-1)} Special`;
    return { kind: "unmapped-sale", week, drink, ringName, serves: serves(random) };
  },
};

/** What a unit of the bar is written as by mistake. */
const SLIPS: Partial<Record<Unit | "top", Unit[]>> = {
  oz: ["ml"],
  cl: ["ml", "oz"],
  dash: ["barspoon", "drop"],
  barspoon: ["dash", "tbsp"],
  tsp: ["tbsp"],
  tbsp: ["tsp"],
  "oz-wt": ["g"],
  g: ["oz-wt"],
  kg: ["g"],
};

function batchesOf(bar: ReadBar, truth: Room["truth"]): string[] {
  return bar.facts.book.batches
    .filter(({ at }) => at.slice(0, 10) >= truth.from && at.slice(0, 10) <= truth.to)
    .map(({ prep }) => prep);
}

/** Whether a cause names what was planted. */
export function isSame(what: string | [string, string], planted: string | [string, string]): boolean {
  return JSON.stringify(what) === JSON.stringify(planted);
}
