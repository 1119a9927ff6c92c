import {
  type Catalogue,
  cutOf,
  type Day,
  inBase,
  type SimDrink,
  type SimLine,
  type SimModifier,
  versionOn,
} from "./catalogue.ts";

/** One thing a serve asks of the bar: poured from stock, cut from fruit, or topped up by eye. */
export type Ask = { how: "poured" | "cut" | "topped"; item: string; amount: number };

/** What a line of a drink comes to before preps made to order are opened up. */
type Measured = { item: string; amount: number; isTop: boolean };

const knownAsks = new WeakMap<Catalogue, WeakMap<SimDrink, Map<string, readonly Ask[]>>>();

/**
 * What one serve asks, with the till's modifiers applied, in base units.
 *
 * Stocked preps are used themselves; preps made to order are opened up; what an uncounted cut gives stays a cut.
 */
export function serveAsks(serve: Serve): readonly Ask[] {
  const { catalogue, drink, day, modifiers } = serve;
  const ofCatalogue = knownAsks.get(catalogue) ?? new WeakMap<SimDrink, Map<string, readonly Ask[]>>();
  knownAsks.set(catalogue, ofCatalogue);
  const ofDrink = ofCatalogue.get(drink) ?? new Map<string, readonly Ask[]>();
  ofCatalogue.set(drink, ofDrink);
  const key = JSON.stringify([day, modifiers]);
  const asks = ofDrink.get(key) ?? workedOut(serve);
  ofDrink.set(key, asks);
  return asks;
}

type Serve = { catalogue: Catalogue; drink: SimDrink; day: Day; modifiers: readonly string[] };

function workedOut({ catalogue, drink, day, modifiers }: Serve): Ask[] {
  const version = versionOn(drink.versions, day);
  if (version === undefined) throw new Error(`${drink.name} has no spec on day ${day}`);
  const rows = modifiers.flatMap((name) => catalogue.modifiers.filter(({ modifier }) => modifier === name));
  const plain = measured(drink, version.lines);
  const changed = [...rows.filter(isNotTimes), ...rows.filter((row) => !isNotTimes(row))].reduce(
    modified,
    plain,
  );
  return changed.flatMap(({ item, amount, isTop }) =>
    isTop ? [{ how: "topped" as const, item, amount }] : opened(catalogue, item, amount, day),
  );
}

/** What a pour that the till sells as an item asks. */
export function pourAsks(item: string, amountBase: number): Ask[] {
  return [{ how: "poured", item, amount: amountBase }];
}

/** Prep lines of one prep, in base units, for so much of it. */
export function prepAsks(catalogue: Catalogue, name: string, amountMl: number, day: Day): Ask[] {
  const prep = catalogue.preps.find((one) => one.name === name);
  if (prep === undefined) throw new Error(`${name} is no prep`);
  const share = amountMl / prep.yieldMl;
  const fromSpec = (versionOn(prep.versions, day)?.lines ?? []).flatMap((line) => {
    if (line.unit === "top" || line.amount === null) throw new Error(`${name} cannot be topped up`);
    return opened(catalogue, line.item, inBase(line.amount, line.unit) * share, day);
  });
  const fromCut: Ask[] =
    cutOf(catalogue, name, day) === undefined ? [] : [{ how: "cut", item: name, amount: amountMl }];
  return [...fromSpec, ...fromCut];
}

function opened(catalogue: Catalogue, name: string, amount: number, day: Day): Ask[] {
  const item = catalogue.items.find((one) => one.name === name);
  if (item === undefined) throw new Error(`${name} is not in the catalogue`);
  if (item.stocked !== false) return [{ how: "poured", item: name, amount }];
  if (cutOf(catalogue, name, day) !== undefined) return [{ how: "cut", item: name, amount }];
  return prepAsks(catalogue, name, amount, day);
}

function measured(drink: SimDrink, specLines: readonly SimLine[]): Measured[] {
  const stated = specLines.flatMap(({ amount, unit, item }) =>
    unit === "top" || amount === null
      ? []
      : [{ item, amount: inBase(amount, unit), isTop: false, isLiquid: isVolume(unit) }],
  );
  const liquidMl = stated.filter(({ isLiquid }) => isLiquid).reduce((sum, { amount }) => sum + amount, 0);
  return specLines.map((line) =>
    line.unit === "top" || line.amount === null
      ? { item: line.item, amount: topUpMl(drink, liquidMl), isTop: true }
      : { item: line.item, amount: inBase(line.amount, line.unit), isTop: false },
  );
}

function isVolume(unit: string): boolean {
  return !["g", "kg", "lb", "oz-wt", "each", "piece"].includes(unit);
}

/** Share of the glass that is filled, that ice fills, and share of the drink that melts into it (common practice). */
const FILLED = 0.9;
const ICE_SHARE = { none: 0, cubed: 0.4, crushed: 0.5, large: 0.3 } as const;
const MELT = { built: 0.1, shaken: 0.5, stirred: 0.35, blended: 0.9, thrown: 0.25 } as const;

/** What fills the glass to a finger below the rim over ice; at least a splash. */
export function topUpMl(drink: SimDrink, liquidMl: number): number {
  const room = drink.glassMl * (FILLED - ICE_SHARE[drink.ice]) - liquidMl * (1 + MELT[drink.technique]);
  return Math.max(20, room);
}

function isNotTimes(row: SimModifier): boolean {
  return row.effect !== "times";
}

function modified(soFar: Measured[], row: SimModifier): Measured[] {
  switch (row.effect) {
    case "none":
      return soFar;
    case "remove":
      return soFar.filter(({ item }) => item !== row.item);
    case "swap":
      return soFar.map((line) => (line.item === row.item ? { ...line, item: row.with ?? line.item } : line));
    case "add":
      return [
        ...soFar,
        { item: row.item ?? "", amount: inBase(row.amount ?? 0, row.unit ?? "ml"), isTop: false },
      ];
    case "times":
      return soFar.map((line) =>
        row.item === undefined || line.item === row.item
          ? { ...line, amount: line.amount * (row.factor ?? 1) }
          : line,
      );
  }
}
