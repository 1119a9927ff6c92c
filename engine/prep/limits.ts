import { type Catalogue, itemNamed } from "#engine/catalogue.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import { type CutWanted, sharesByPart } from "#engine/prep/cut-list.ts";
import type { Making } from "#engine/prep/making.ts";

/** An input that will not do for a batch: `available` of the `wanted`, in base units. */
export type Shortage = { item: string; base: BaseUnit; wanted: number; available: number; short: number };

/** What inputs allow of one batch. */
export type Limit = {
  prep: string;
  /** How much of it the inputs on hand make, in base units; never more than planned. */
  canMake: number;
  missing: Shortage[];
};

export type PlannedMake = { making: Making; make: number };

/**
 * Holds the batches, in their order of work, against the inputs on hand; what one batch takes the next has not.
 *
 * What a batch of this plan makes is there for later ones, as far as it could be made. An input never counted is not
 * taken as missing: nobody knows what there is. Fruit counts by the shared-parts rule over the batches so far.
 */
export function limitsOf(
  catalogue: Catalogue,
  batches: readonly PlannedMake[],
  onHand: ReadonlyMap<string, number>,
): Limit[] {
  const left = new Map(onHand);
  const cut: CutWanted[] = [];
  return batches.map(({ making, make }) => {
    const inputs = making.inputs.map(({ item, perUnit }) => ({ item, wanted: perUnit * make }));
    const fruit = fruitAdded(cut, making, make);
    const missing = [...inputs, ...fruit].flatMap((input) => shortage(catalogue, left, input));
    const shares = missing.map(({ available, wanted }) => available / wanted);
    const canMake = make * Math.min(1, ...shares);
    for (const { item, perUnit } of making.inputs) take(left, item, perUnit * canMake);
    for (const { item, wanted } of fruitAdded(cut, making, canMake)) take(left, item, wanted);
    cut.push(...scaledCuts(making, canMake));
    if (left.has(making.prep)) take(left, making.prep, -canMake);
    return { prep: making.prep, canMake, missing };
  });
}

/** Pieces of each fruit that a batch asks beyond what the batches before it asked already. */
function fruitAdded(
  before: readonly CutWanted[],
  making: Making,
  make: number,
): { item: string; wanted: number }[] {
  const added = scaledCuts(making, make);
  return [...new Set(added.map(({ source }) => source))].map((source) => ({
    item: source,
    wanted: piecesOf([...before, ...added], source) - piecesOf(before, source),
  }));
}

function scaledCuts({ cuts }: Making, make: number): CutWanted[] {
  return cuts.map(({ source, gives, amount, parts, shares }) => ({
    source,
    gives,
    parts,
    amount: amount * make,
    shares: shares * make,
  }));
}

function piecesOf(cuts: readonly CutWanted[], source: string): number {
  const shares = sharesByPart(cuts.filter((cut) => cut.source === source));
  return Math.max(0, ...shares.values());
}

function shortage(
  catalogue: Catalogue,
  left: ReadonlyMap<string, number>,
  { item, wanted }: { item: string; wanted: number },
): Shortage[] {
  const held = left.get(item);
  if (held === undefined || !(wanted > 0)) return [];
  const available = Math.max(0, held);
  const short = wanted - available;
  if (short <= wanted * 1e-9) return [];
  return [{ item, base: itemNamed(catalogue, item).base, wanted, available, short }];
}

function take(left: Map<string, number>, item: string, amount: number): void {
  const held = left.get(item);
  if (held !== undefined) left.set(item, held - amount);
}
