import type { Unit } from "#engine/measure/units.ts";

/**
 * Trouble to plant. `week` counts from 1; week n lies between counts n − 1 and n, the opening count being 0.
 * The kinds are those a cause can have.
 */
export type Fault =
  | { kind: "delivery-not-entered"; week: number; item: string }
  | { kind: "delivery-entered-twice"; week: number; item: string }
  | { kind: "delivery-short"; week: number; item: string; containers: number }
  | { kind: "wrong-pack-size"; week: number; item: string; pack: string }
  | { kind: "container-miscounted"; week: number; item: string; sign: 1 | -1; containers: number }
  | { kind: "area-skipped"; week: number; area: string }
  | { kind: "over-pour"; week: number; untilWeek: number; item: string; share: number }
  | { kind: "poured-for-another"; week: number; drink: string; spec: string; poured: string; share: number }
  | { kind: "rung-for-another"; week: number; rung: string; made: string; serves: number }
  | { kind: "not-rung"; week: number; drink: string; serves: number }
  | { kind: "older-spec"; week: number; untilWeek: number; drink: string }
  /** In the spec of a drink or a prep. */
  | { kind: "unit-slip"; drink: string; item: string; unit: Unit }
  | { kind: "batch-not-logged"; week: number; prep: string }
  | { kind: "batch-thrown-out"; week: number; prep: string }
  | { kind: "breakage"; week: number; item: string; containers: number }
  | { kind: "yield-drift"; week: number; untilWeek: number; fruit: string; factor: number }
  | { kind: "unmapped-sale"; week: number; drink: string; ringName: string; serves: number };

export type FaultKind = Fault["kind"];

/** A fault as it came about, in the words of a cause: what, how much, in which week. */
export type Planted = {
  kind: FaultKind;
  week: number;
  /** Business date of its first effect. */
  date: string;
  what: string | [string, string];
  size: number;
  unit: string;
  /** +1 counted too many, −1 too few. */
  sign?: 1 | -1;
  /** Name of the count that is wrong. */
  count?: string;
};

/** What was planted so far: sizes add up by kind, subject and week. */
export type Plantings = {
  add(planting: Planted): void;
  all(): Planted[];
};

export function newPlantings(): Plantings {
  const byKey = new Map<string, Planted>();
  return {
    add(planting) {
      const key = JSON.stringify([planting.kind, planting.week, planting.what, planting.count ?? ""]);
      const before = byKey.get(key);
      if (before === undefined) byKey.set(key, { ...planting });
      else before.size += planting.size;
    },
    all: () => [...byKey.values()].sort((a, b) => a.week - b.week || a.kind.localeCompare(b.kind, "en")),
  };
}

/** The faults of one kind that hold in a week. */
export function faultsIn<K extends FaultKind>(
  faults: readonly Fault[],
  kind: K,
  week: number,
): Extract<Fault, { kind: K }>[] {
  return faults.filter(
    (fault): fault is Extract<Fault, { kind: K }> => fault.kind === kind && holdsIn(fault, week),
  );
}

function holdsIn(fault: Fault, week: number): boolean {
  if (!("week" in fault)) return true;
  return "untilWeek" in fault ? fault.week <= week && week <= fault.untilWeek : fault.week === week;
}
