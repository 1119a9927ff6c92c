import { problemsIn } from "#db/book/check-facts.ts";
import { baseAmount } from "#engine/catalogue.ts";
import { billCost } from "#engine/costing/portion-cost.ts";
import { unitCosts } from "#engine/costing/unit-cost.ts";
import { factsOf } from "#engine/facts.ts";
import { foldName } from "#engine/name.ts";
import { type BatchCard, batchCard } from "#engine/prep/batch-card.ts";
import { localToInstant } from "#engine/sales/read/clock.ts";
import { type Bill, billOfBatch } from "#engine/specs/bill.ts";
import { bookWith, type NewPrep } from "#engine/specs/new-prep.ts";
import type { World } from "#server/world.ts";

/** What a new prep would be: its card with the label, its cost, and what is wrong with it; nothing is written. */
export type NewPrepPreview = {
  problems: string[];
  card: BatchCard | null;
  cost: NewPrepCost | null;
};

/** Of one yield, and of a litre, kilogram or piece, in major money units; null where a price is not known. */
export type NewPrepCost = {
  cost: number | null;
  costPer: number | null;
  per: "litre" | "kilogram" | "piece";
  unpriced: string[];
};

const PER = { ml: "litre", g: "kilogram", each: "piece" } as const;

/** Nothing of what happened bears on what a prep would be. */
const NOTHING_HAPPENED = {
  counts: [],
  deliveries: [],
  batches: [],
  batchInputs: [],
  losses: [],
  transfers: [],
  orders: [],
};

/** Reckons a new prep on a copy of the book that has it already. */
export function previewNewPrep(world: World, wanted: NewPrep): NewPrepPreview {
  const { book, catalogue } = world.facts;
  const { item, prep } = wanted;
  if (catalogue.itemNames.has(foldName(item.name))) {
    const taken = `There is a "${item.name}" already; open it, or choose another name.`;
    return { problems: [taken], card: null, cost: null };
  }
  const draft = bookWith({ ...book, ...NOTHING_HAPPENED }, wanted);
  const problems = problemsIn(draft).map(({ message }) => message);
  if (problems.length > 0) return { problems: [...new Set(problems)], card: null, cost: null };
  const facts = factsOf(draft);
  const card = batchCard({ facts, prep: item.name, date: prep.from });
  const made = baseAmount(facts.catalogue, { item: item.name, amount: prep.yield, unit: prep.unit });
  const bill = billOfBatch(facts.catalogue, { prep: item.name, amount: made, date: prep.from });
  return { problems: [], card, cost: bill === undefined ? null : costOf(world, wanted, { bill, made }) };
}

function costOf(
  { facts, lastMoment }: World,
  { item, otherItems, prep }: NewPrep,
  { bill, made }: { bill: Bill; made: number },
): NewPrepCost {
  const { venue } = facts.catalogue;
  const costs = unitCosts(facts, lastMoment ?? localToInstant(`${prep.from} ${venue.dayEnds}`, venue));
  // What the form brings along is water, which costs nothing.
  for (const { name } of otherItems) costs.set(name, 0);
  const { cost, unpriced } = billCost(bill, costs);
  const large = item.base === "each" ? 1 : 1000;
  return { cost, costPer: cost === null ? null : (cost / made) * large, per: PER[item.base], unpriced };
}
