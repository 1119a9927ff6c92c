import { foldName } from "#engine/name.ts";
import { batchCard } from "#engine/prep/batch-card.ts";
import { prepPlan } from "#engine/prep/plan.ts";
import { businessDateOf, localMinute, localToInstant } from "#engine/sales/read/clock.ts";
import type { BusinessDate } from "#engine/time.ts";
import { refuseFarOff } from "#server/far-off.ts";
import { InputError } from "#server/input-error.ts";
import { momentOf, type World } from "#server/world.ts";

export type PrepChoice = {
  date?: BusinessDate | undefined;
  days?: number | undefined;
  /** How sure it shall be that the most pieces of a fruit are enough. */
  certainty?: number | undefined;
};

export type PrepReport = Awaited<ReturnType<typeof prepOn>>;

/** What to make on a business date, by default that of the book's last moment. Moments are the venue's local time. */
export async function prepFor(
  world: World,
  { date = lastDate(world), days, certainty }: PrepChoice,
): Promise<PrepReport> {
  const key = JSON.stringify(["prep", date, days, certainty]);
  return world.remembered(key, () => prepOn(world, { date, days, certainty }));
}

async function prepOn(
  world: World,
  { date, days, certainty }: { date: BusinessDate; days: number | undefined; certainty: number | undefined },
) {
  refuseFarOff(world, date, "for");
  const { venue } = world.facts.catalogue;
  const plan = prepPlan({
    facts: world.facts,
    // Any moment of the day asked for: its sales are needed line by line.
    sales: await world.salesBetween({ at: localToInstant(`${date} ${venue.dayEnds}`, venue) }),
    date,
    ...(days === undefined ? {} : { days }),
    certainty,
  });
  return {
    ...plan,
    at: localMinute(plan.at, venue),
    batches: plan.batches.map((batch) => ({ ...batch, readyAt: localMinute(batch.readyAt, venue) })),
    discard: plan.discard.map((old) => ({ ...old, madeAt: localMinute(old.madeAt, venue) })),
  };
}

export type CardChoice = {
  prep: string;
  date?: BusinessDate | undefined;
  make?: number | undefined;
  vessel?: boolean | undefined;
  /** As much as this much of one input makes, in its base unit. */
  scaleTo?: { item: string; amount: number } | undefined;
  batchNo?: number | undefined;
  certainty?: number | undefined;
};

/** One batch of a prep, scaled; by default as much as the day's plan asks for, on the book's last day. */
export async function batchCardFor(world: World, choice: CardChoice) {
  const { make, vessel, scaleTo, batchNo, certainty } = choice;
  const name = world.facts.catalogue.itemNames.get(foldName(choice.prep));
  if (name === undefined) throw new InputError(`No prep is named "${choice.prep}".`);
  const date = choice.date ?? cardDate(world, name);
  const isSized = make !== undefined || vessel === true || scaleTo !== undefined;
  const planned = isSized
    ? undefined
    : (await prepFor(world, { date })).batches.find((batch) => batch.prep === name)?.make;
  return batchCard({
    facts: world.facts,
    prep: name,
    date,
    ...withoutUndefined({ make: make ?? planned, vessel, scaleTo, batchNo, certainty }),
  });
}

function withoutUndefined<Choice extends object>(choice: Choice) {
  return Object.fromEntries(Object.entries(choice).filter(([, value]) => value !== undefined)) as {
    [Key in keyof Choice]?: Exclude<Choice[Key], undefined>;
  };
}

/** The book's last day, or the first on which the prep is made: one written today has a card before the next sale is read in. */
function cardDate(world: World, prep: string): BusinessDate {
  const last = lastDate(world);
  const [first] = (world.facts.catalogue.preps.get(prep) ?? []).map(({ from }) => from).sort();
  return first !== undefined && first > last ? first : last;
}

function lastDate(world: World): BusinessDate {
  return businessDateOf(momentOf(world), world.facts.catalogue.venue);
}
