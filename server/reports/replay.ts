import { foldName } from "#engine/name.ts";
import { replay } from "#engine/orders/replay.ts";
import { InputError } from "#server/input-error.ts";
import { momentOf, type World } from "#server/world.ts";
import { YoungBookError } from "#server/young-book-error.ts";

export type ReplayChoice = {
  weeks?: number | undefined;
  /** Pars set by hand, in base units by item. */
  pars?: Readonly<Record<string, number>> | undefined;
};

export type ReplayReport = Awaited<ReturnType<typeof replayFor>>;

/** The venue's settings, pars set by hand, and other service levels tried on its own last weeks. */
export async function replayFor(world: World, { weeks, pars = {} }: ReplayChoice) {
  const at = momentOf(world);
  const named = new Map(Object.entries(pars).map(([item, par]) => [itemKnown(world, item), par]));
  const report = await world.remembered(JSON.stringify(["replay", at, weeks, pars]), async () =>
    replay({
      facts: world.facts,
      sales: await world.salesBetween({ at }),
      at,
      pars: named,
      ...(weeks === undefined ? {} : { weeks }),
    }),
  );
  if (report === null) {
    throw new YoungBookError(
      "more-sales",
      "A replay takes four weeks of sales: three to learn from and one to try on. Read in older sales files first.",
    );
  }
  return { ...report, currency: world.facts.catalogue.venue.currency };
}

function itemKnown({ facts }: World, name: string): string {
  for (const known of facts.catalogue.items.keys()) if (foldName(known) === foldName(name)) return known;
  throw new InputError(`pars: no item is named "${name}".`);
}
