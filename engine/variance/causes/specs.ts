import type { SpecVersion } from "#engine/catalogue.ts";
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

/** Serves in the windows beside, for each serve between the counts, as far as the same version held there. */
export function sharesOfServes(
  { facts, from }: Scene,
  { drink, serves }: DrinkScene,
  version: SpecVersion,
): { before: number; after: number } {
  const versions = facts.catalogue.specs.get(drink) ?? [];
  const isSameBefore = inForce(versions, addDays(from.slice(0, 10), -1)) === version;
  return { before: isSameBefore ? serves.before / serves.now : 0, after: serves.after / serves.now };
}
