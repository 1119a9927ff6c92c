import { itemNamed } from "#engine/catalogue.ts";
import { unitCosts } from "#engine/costing/unit-cost.ts";
import { foldName } from "#engine/name.ts";
import { batchHabits } from "#engine/prep/batch-habits.ts";
import { type MakeOrBuy, makeOrBuy } from "#engine/prep/make-or-buy.ts";
import { shelfLifeDays } from "#engine/prep/use-by.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { InputError } from "#server/input-error.ts";
import { momentOf, type World } from "#server/world.ts";

export type MakeOrBuyChoice = {
  prep: string;
  /** Major money units an hour. */
  labourPerHour?: number | undefined;
  /** Major money units a litre, kilogram or piece; without it the first price in the packs. */
  boughtPrice?: number | undefined;
  /** Share of what is bought that is thrown out in the end. */
  boughtLossShare?: number | undefined;
};

/** Costs are of a litre, a kilogram or a piece (`per`), in major money units; amounts of batches in that, too. */
export type MakeOrBuyReport = Pick<MakeOrBuy, "prep" | "base" | "made" | "bought" | "cheaper" | "missing"> & {
  per: "litre" | "kilogram" | "piece";
  shelfLifeDays: number | null;
  /** Of the last quarter's batches, else one yield of the sheet; null when neither is known. */
  batchSize: number | null;
  lossShareMade: number;
  usedPerDay: number | null;
  /** From which batch on making is cheaper: 0 = always, null = never or not known. */
  breakEvenBatch: number | null;
  /** What is used before a batch is past its date: a larger batch is partly thrown out. */
  usedWhileItKeeps: number | null;
};

/** A prep made against bought, at the last moment of the book, with what its records say of batches and losses. */
export function makeOrBuyFor(
  world: World,
  { prep, labourPerHour, boughtPrice, boughtLossShare }: MakeOrBuyChoice,
): MakeOrBuyReport {
  const { facts } = world;
  const { catalogue } = facts;
  const name = catalogue.itemNames.get(foldName(prep));
  if (name === undefined) throw new InputError(`No prep is named "${prep}".`);
  const at = momentOf(world);
  // A prep written after the book's last moment is reckoned on its own first day.
  const firstDays = (catalogue.specs.get(name) ?? []).map(({ from }) => from).sort();
  const date = [businessDateOf(at, catalogue.venue), firstDays[0] ?? ""].sort().at(-1) ?? "";
  const { base } = itemNamed(catalogue, name);
  const perBase = base === "each" ? 1 : 1000;
  const habits = batchHabits(facts, name, date);
  const lossShareMade = habits.lossShare ?? 0;
  const answer = makeOrBuy({
    catalogue,
    prep: name,
    date,
    costs: unitCosts(facts, at),
    lossShareMade,
    ...(labourPerHour === undefined ? {} : { labourPerHour }),
    ...(habits.batchSize === null ? {} : { batchSize: habits.batchSize }),
    ...(boughtPrice === undefined ? {} : { boughtCost: boughtPrice / perBase }),
    ...(boughtLossShare === undefined ? {} : { lossShareBought: boughtLossShare }),
  });
  const keepsDays = shelfLifeDays(catalogue, name, date);
  const inLarge = (amount: number | null) => (amount === null ? null : amount / perBase);
  return {
    ...answer,
    made: answer.made && scaled(answer.made, perBase),
    bought: answer.bought && scaled(answer.bought, perBase),
    per: base === "each" ? "piece" : base === "g" ? "kilogram" : "litre",
    shelfLifeDays: keepsDays,
    batchSize: inLarge(habits.batchSize),
    lossShareMade,
    usedPerDay: inLarge(habits.usedPerDay),
    breakEvenBatch: inLarge(answer.breakEvenBatch),
    usedWhileItKeeps:
      keepsDays === null || habits.usedPerDay === null ? null : inLarge(habits.usedPerDay * keepsDays),
  };
}

function scaled<Costs extends Record<string, number>>(costs: Costs, by: number): Costs {
  return Object.fromEntries(Object.entries(costs).map(([key, cost]) => [key, cost * by])) as Costs;
}
