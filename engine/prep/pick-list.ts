import { type Catalogue, itemNamed } from "#engine/catalogue.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import type { CutLine } from "#engine/prep/cut-list.ts";
import type { PrepNeed } from "#engine/prep/need.ts";
import { weightG } from "#engine/prep/weights.ts";
import type { BusinessDate } from "#engine/time.ts";

/** One thing to fetch before work begins. */
export type PickLine = {
  item: string;
  /** In the base unit; pieces are whole. */
  amount: number;
  base: BaseUnit;
  weightG: number | null;
  /** What should be there; null for what is never counted. */
  onHand: number | null;
  /** Of `amount`: what is not there. */
  short: number;
};

/**
 * All that the day's batches and cuts take from the shelves, each item once: fruit as whole pieces by the shared-parts
 * rule over the whole day, and nothing that the plan itself makes.
 */
export function pickList(
  catalogue: Catalogue,
  {
    jobs,
    cuts,
    onHand,
    date,
  }: {
    jobs: readonly PrepNeed[];
    cuts: readonly CutLine[];
    onHand: ReadonlyMap<string, number>;
    date: BusinessDate;
  },
): PickLine[] {
  const made = new Set(jobs.map(({ making }) => making.prep));
  const amounts = new Map<string, number>();
  const add = (item: string, amount: number) => amounts.set(item, (amounts.get(item) ?? 0) + amount);
  for (const { making, make } of jobs) {
    for (const { item, perUnit } of making.inputs) if (!made.has(item)) add(item, perUnit * make);
  }
  for (const { source, pieces } of cuts) add(source, pieces);
  return [...amounts].map(([item, exact]) => {
    const { base } = itemNamed(catalogue, item);
    // Half a lime is not fetched; the dust of floating point fetches no piece more.
    const amount = base === "each" ? Math.ceil(exact - 1e-9) : exact;
    const held = onHand.get(item) ?? null;
    return {
      item,
      amount,
      base,
      weightG: weightG(catalogue, { item, amount }, date) ?? null,
      onHand: held,
      short: held === null ? 0 : Math.max(0, amount - Math.max(0, held)),
    };
  });
}
