import { baseAmount, type Catalogue, itemNamed, type SpecVersion } from "#engine/catalogue.ts";
import { unitFactor } from "#engine/measure/unit-factor.ts";
import type { Unit } from "#engine/measure/units.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { billOfBatch } from "#engine/specs/bill.ts";
import type { SpecLine } from "#engine/specs/spec.ts";
import type { BusinessDate } from "#engine/time.ts";
import { type Candidate, shareChance, type Weighed } from "#engine/variance/causes/candidate.ts";
import { dateOfScene } from "#engine/variance/causes/containers.ts";
import { difference } from "#engine/variance/causes/ringing.ts";
import { linesBill, type Scene, type Thrice } from "#engine/variance/causes/scene.ts";
import { sharesOfServes } from "#engine/variance/causes/specs.ts";
import { inForce } from "#engine/versions.ts";

const UNIT_SLIP = 0.1;

/** Units that are written for one another, and how readily. */
const SLIPS: [Unit, Unit, number][] = [
  ["ml", "oz", 3],
  ["cl", "ml", 3],
  ["cl", "oz", 1],
  ["l", "ml", 0.3],
  ["dash", "barspoon", 3],
  ["dash", "tsp", 1],
  ["dash", "splash", 1],
  ["dash", "drop", 2],
  ["dash", "ml", 1],
  ["barspoon", "tsp", 1],
  ["barspoon", "oz", 1],
  ["barspoon", "tbsp", 1],
  ["barspoon", "ml", 1],
  ["tsp", "tbsp", 2],
  ["tsp", "ml", 1],
  ["tsp", "oz", 0.5],
  ["tbsp", "oz", 0.5],
  ["splash", "oz", 1],
  ["splash", "barspoon", 1],
  ["g", "oz-wt", 1],
  ["g", "kg", 0.3],
];

/** The least and the most of one line that a glass, or a pot, is given, in ml or g. */
const GLASS = { least: 0.05, most: 250 };
const POT = { least: 0.05, most: 20_000 };
/** Batches and serves are known; how they were poured and measured is not, to about so much. */
const SIZE_SD = 0.06;

/**
 * An amount off by its unit: the spec says ml where oz are poured, a dash where a barspoon is. A spec is off for
 * every serve sold and every batch made by it, in the windows beside too.
 */
export function unitSlip(scene: Scene): Candidate[] {
  return shareChance(UNIT_SLIP, [...slipsInDrinks(scene), ...slipsInPreps(scene)]);
}

function slipsInDrinks(scene: Scene): Weighed[] {
  const { catalogue } = scene.facts;
  return [...scene.drinks.values()].flatMap((sold): Weighed[] => {
    const { drink, date, serves, perServe } = sold;
    const version = inForce(catalogue.specs.get(drink) ?? [], date);
    if (serves.now <= 0 || version === undefined) return [];
    const beside = sharesOfServes(scene, sold, version);
    return slipsOf(catalogue, version, GLASS).flatMap(({ line, unit, lines, weight }): Weighed[] => {
      const meant = scene.useOf(linesBill(scene.facts, drink, lines, date));
      const effects = difference(perServe, meant).filter(({ item }) => !isHabit(scene, version, item));
      if (effects.length === 0) return [];
      return [
        {
          kind: "unit-slip",
          what: drink,
          unit: "serve",
          effects: effects.map(({ item, now }) => ({
            item,
            before: now * beside.before,
            now,
            after: now * beside.after,
          })),
          size: { kind: "around", center: serves.now, relativeSd: SIZE_SD },
          weight,
          check: () => slipCheck(drink, line, unit),
        },
      ];
    });
  });
}

/** What a spec that was wrong all along did to the estimate of a top-up, the bar's habit has taken in (habits.ts). */
function isHabit({ items }: Scene, { lines }: SpecVersion, item: string): boolean {
  const isTopped = lines.some((line) => line.unit === "top" && line.item === item);
  return isTopped && items.get(item)?.now.learned !== undefined;
}

/** A prep's spec that is off shows in its inputs, by what was made of it: in batches, or, made to order, in serves. */
function slipsInPreps(scene: Scene): Weighed[] {
  const { catalogue } = scene.facts;
  const date = dateOfScene(scene);
  return [...catalogue.preps.keys()].flatMap((prep): Weighed[] => {
    const version = inForce(catalogue.specs.get(prep) ?? [], date);
    if (version === undefined || catalogue.drinks.has(prep)) return [];
    const madeIn = madeFinder(scene, prep, version);
    const made = madeIn("now");
    const asWritten = unitUse(scene, catalogue, prep, date);
    if (made <= 0 || asWritten === undefined) return [];
    return slipsOf(catalogue, version, POT).flatMap(({ line, unit, lines, weight }): Weighed[] => {
      const asMeant = unitUse(scene, withLines(catalogue, prep, lines), prep, date);
      const effects = asMeant === undefined ? [] : difference(asWritten, asMeant);
      if (effects.length === 0) return [];
      const before = madeIn("before") / made;
      const after = madeIn("after") / made;
      return [
        {
          kind: "unit-slip",
          what: prep,
          unit: itemNamed(catalogue, prep).base,
          effects: effects.map(({ item, now }) => ({ item, before: now * before, now, after: now * after })),
          size: { kind: "around", center: made, relativeSd: SIZE_SD },
          weight,
          check: () => slipCheck(prep, line, unit),
        },
      ];
    });
  });
}

function slipCheck(makes: string, { amount, unit: written, item }: SpecLine, unit: Unit): string {
  return `Read the spec of ${makes}: it says ${amount} ${written} of ${item}; the numbers fit ${amount} ${unit}.`;
}

/** What one base unit of a prep takes of each item. */
function unitUse(
  scene: Scene,
  catalogue: Catalogue,
  prep: string,
  date: BusinessDate,
): Map<string, number> | undefined {
  const bill = billOfBatch(catalogue, { prep, amount: 1, date });
  return bill === undefined ? undefined : scene.useOf(bill);
}

function withLines(catalogue: Catalogue, prep: string, lines: SpecLine[]): Catalogue {
  const versions = (catalogue.specs.get(prep) ?? []).map((version) => ({ ...version, lines }));
  return { ...catalogue, specs: new Map(catalogue.specs).set(prep, versions) };
}

/** How much of a prep was made by a version in a window; of one made to order, what the drinks sold took of it. */
function madeFinder(scene: Scene, prep: string, version: SpecVersion): (when: keyof Thrice) => number {
  const { catalogue, book } = scene.facts;
  if (!itemNamed(catalogue, prep).stocked) return takenFinder(scene, prep);
  const versions = catalogue.specs.get(prep) ?? [];
  const counted = [prep, ...version.lines.map(({ item }) => item)].find((item) => scene.items.has(item));
  const windows = scene.items.get(counted ?? prep);
  const batches = book.batches
    .filter((batch) => batch.prep === prep)
    .filter(({ at }) => inForce(versions, businessDateOf(at, catalogue.venue)) === version);
  return (when) => {
    const window = windows?.[when];
    if (window === undefined) return 0;
    return batches
      .filter(({ at }) => at >= window.opening.at && at < window.closing.at)
      .reduce((sum, { made, unit }) => sum + baseAmount(catalogue, { item: prep, amount: made, unit }), 0);
  };
}

function takenFinder(scene: Scene, prep: string): (when: keyof Thrice) => number {
  const { catalogue } = scene.facts;
  const taken = [...scene.drinks.values()].flatMap(({ drink, date, serves }) =>
    (inForce(catalogue.specs.get(drink) ?? [], date)?.lines ?? []).flatMap(({ item, amount, unit }) =>
      item !== prep || amount === null || unit === "top"
        ? []
        : [{ serves, each: baseAmount(catalogue, { item, amount, unit }) }],
    ),
  );
  return (when) => taken.reduce((sum, { serves, each }) => sum + serves[when] * each, 0);
}

/** A line of a spec written in another unit than was meant, and the lines as they were meant. */
type Slip = { line: SpecLine; unit: Unit; lines: SpecLine[]; weight: number };

function slipsOf(
  catalogue: Catalogue,
  { lines }: SpecVersion,
  { least, most }: { least: number; most: number },
): Slip[] {
  return lines.flatMap((line) => {
    const { amount, unit: written, item } = line;
    if (amount === null || written === "top") return [];
    const from = unitFactor(written, catalogue.measures);
    return SLIPS.flatMap(([a, b, weight]): Slip[] => {
      const unit = a === written ? b : b === written ? a : undefined;
      if (unit === undefined) return [];
      const to = unitFactor(unit, catalogue.measures);
      const meant = (baseAmount(catalogue, { item, amount, unit: written }) * to.factor) / from.factor;
      if (to.base !== from.base || meant < least || meant > most) return [];
      return [
        { line, unit, weight, lines: lines.map((other) => (other === line ? { ...line, unit } : other)) },
      ];
    });
  });
}
