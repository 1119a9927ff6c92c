import { type Change, drinksNamed } from "#engine/demand/changed-book.ts";
import { whatIf } from "#engine/orders/what-if.ts";
import { InputError } from "#server/input-error.ts";
import { localMinuteOrNull } from "#server/local-time.ts";
import { momentOf, type World } from "#server/world.ts";

export type WhatIfReport = Awaited<ReturnType<typeof whatIfFor>>;

/** What changes would do to the days ahead, from the book's last moment on. Nothing is stored. */
export async function whatIfFor(
  world: World,
  { changes, days }: { changes: readonly Change[]; days: number },
) {
  const { facts } = world;
  for (const name of drinksNamed(changes)) {
    if (!facts.catalogue.drinks.has(name))
      throw new InputError(`No drink is named "${name}". Write its spec first, then ask again.`);
  }
  const at = momentOf(world);
  const report = whatIf({ facts, sales: await world.salesBetween({ at }), at, changes, days });
  const { venue } = facts.catalogue;
  return {
    ...report,
    items: report.items.map((item) => ({ ...item, orderBy: localMinuteOrNull(item.orderBy, venue) })),
    currency: venue.currency,
  };
}
