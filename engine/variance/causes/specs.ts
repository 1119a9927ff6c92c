import type { SpecVersion } from "#engine/catalogue.ts";
import { unitFactor } from "#engine/measure/unit-factor.ts";
import type { Unit } from "#engine/measure/units.ts";
import type { SpecLine } from "#engine/specs/spec.ts";
import { addDays, daysBetween } from "#engine/time.ts";
import { type Candidate, lasting, shareChance, type Weighed } from "#engine/variance/causes/candidate.ts";
import { difference } from "#engine/variance/causes/ringing.ts";
import { type DrinkScene, linesBill, type Scene } from "#engine/variance/causes/scene.ts";
import { inForce } from "#engine/versions.ts";

const OLDER_SPEC = 0.15;
/** A spec changed within these days is often still built the old way. */
const RECENT_DAYS = 42;

/** A drink built to a version before the one in force. */
export function olderSpec(scene: Scene): Candidate[] {
  const weighed = [...scene.drinks.values()].flatMap((sold) =>
    olderVersions(scene, sold).flatMap(({ version, age }): Weighed[] => {
      const { drink, date, serves, perServe } = sold;
      const older = scene.useOf(linesBill(scene.facts, drink, version.lines, date));
      const effects = difference(perServe, older);
      if (effects.length === 0) return [];
      const current = inForce(scene.facts.catalogue.specs.get(drink) ?? [], date);
      const days = daysBetween({ from: current?.from ?? date, to: date });
      return lasting(
        {
          kind: "older-spec",
          what: drink,
          unit: "serve",
          effects,
          size: { kind: "any", max: serves.now, typical: serves.now / 2 },
          weight: (days <= RECENT_DAYS ? 4 : 1) / age ** 2,
          check: () =>
            `Look which spec card of ${drink} is in use behind the bar: the numbers fit the version from ${version.from}.`,
        },
        {
          before: current === undefined ? 0 : sharesOfServes(scene, sold, current).before,
          after: serves.after / serves.now,
        },
      );
    }),
  );
  return shareChance(OLDER_SPEC, weighed);
}

/** The versions before the one in force, the last one first; `age` counts from 1. */
function olderVersions(
  { facts }: Scene,
  { drink, date, serves }: DrinkScene,
): { version: SpecVersion; age: number }[] {
  if (serves.now <= 0) return [];
  const begun = (facts.catalogue.specs.get(drink) ?? []).filter(({ from }) => from <= date);
  return begun
    .slice(0, -1)
    .reverse()
    .map((version, index) => ({ version, age: index + 1 }));
}

const UNIT_SLIP = 0.1;

/** Units that are written for one another, and how readily. */
const SLIPS: [Unit, Unit, number][] = [
  ["ml", "oz", 3],
  ["cl", "ml", 3],
  ["cl", "oz", 1],
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
  ["splash", "oz", 1],
  ["splash", "barspoon", 1],
  ["g", "oz-wt", 1],
  ["g", "kg", 0.3],
];

/** The least and the most of one line that a glass is given, in ml or g. */
const LINE = { least: 0.05, most: 250 };

/**
 * An amount off by its unit: the spec says ml where oz are poured, a dash where a barspoon is. A spec is off for
 * every serve sold by it, in the windows beside too.
 */
export function unitSlip(scene: Scene): Candidate[] {
  const weighed = [...scene.drinks.values()].flatMap((sold): Weighed[] => {
    const { drink, date, serves, perServe } = sold;
    const version = inForce(scene.facts.catalogue.specs.get(drink) ?? [], date);
    if (serves.now <= 0 || version === undefined) return [];
    return version.lines.flatMap((line) =>
      slipsOf(scene, line).flatMap(({ unit, weight }): Weighed[] => {
        const lines = version.lines.map((other) => (other === line ? { ...line, unit } : other));
        const effects = difference(perServe, scene.useOf(linesBill(scene.facts, drink, lines, date)));
        if (effects.length === 0) return [];
        const share = sharesOfServes(scene, sold, version);
        return [
          {
            kind: "unit-slip",
            what: drink,
            unit: "serve",
            effects: effects.map(({ item, now }) => ({
              item,
              before: now * share.before,
              now,
              after: now * share.after,
            })),
            size: { kind: "around", center: serves.now, relativeSd: 0.06 },
            weight,
            check: () =>
              `Read the spec of ${drink}: it says ${line.amount} ${line.unit} of ${line.item}; the numbers fit ${line.amount} ${unit}.`,
          },
        ];
      }),
    );
  });
  return shareChance(UNIT_SLIP, weighed);
}

function slipsOf({ facts }: Scene, { amount, unit, item }: SpecLine): { unit: Unit; weight: number }[] {
  const { measures, items } = facts.catalogue;
  const base = items.get(item)?.base;
  if (amount === null || unit === "top") return [];
  return SLIPS.flatMap(([a, b, weight]) => {
    const other = a === unit ? b : b === unit ? a : undefined;
    if (other === undefined || unitFactor(other, measures).base !== base) return [];
    const given = amount * unitFactor(other, measures).factor;
    return given >= LINE.least && given <= LINE.most ? [{ unit: other, weight }] : [];
  });
}

/** Serves in the windows beside, for each serve between the counts, as far as the same version held there. */
function sharesOfServes(
  { facts, from }: Scene,
  { drink, serves }: DrinkScene,
  version: SpecVersion,
): { before: number; after: number } {
  const versions = facts.catalogue.specs.get(drink) ?? [];
  const isSameBefore = inForce(versions, addDays(from.slice(0, 10), -1)) === version;
  return { before: isSameBefore ? serves.before / serves.now : 0, after: serves.after / serves.now };
}
