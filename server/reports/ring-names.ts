import type { Db } from "#db/open.ts";
import { type DatedRingName, datedRingNames } from "#db/ring-names-repository.ts";
import { salesTexts, talliesBetween } from "#db/sales-repository.ts";
import { currencyDigits } from "#engine/currency.ts";
import { foldName } from "#engine/name.ts";
import type { BusinessDate } from "#engine/time.ts";
import type { World } from "#server/world.ts";

/** What was sold under a ring name, of all days: what moves when its meaning does. Money in major units. */
export type RungSales = { quantity: number; net: number; from: BusinessDate; to: BusinessDate };

/** Every ring name that somebody explained, when and by whom, and what hangs on it; most money first. */
export async function ringNamesReport(
  db: Db,
  world: World,
): Promise<(DatedRingName & { sold: RungSales | null })[]> {
  const sold = await rungSales(db, 10 ** currencyDigits(world.facts.catalogue.venue.currency));
  const names = await datedRingNames(db);
  return names
    .map((name) => ({ ...name, sold: sold.get(foldName(name.ringName)) ?? null }))
    .sort((one, other) => (other.sold?.net ?? 0) - (one.sold?.net ?? 0));
}

async function rungSales(db: Db, minor: number): Promise<Map<string, RungSales>> {
  const texts = await salesTexts(db);
  const sold = new Map<number, RungSales>();
  for (const { businessDate, tally } of await talliesBetween(db, { from: "0001-01-01", to: "9999-12-31" })) {
    for (let place = 0; place < tally.count; place += 1) {
      const number = tally.ringName[place] ?? 0;
      const held = sold.get(number) ?? { quantity: 0, net: 0, from: businessDate, to: businessDate };
      held.quantity += tally.quantity[place] ?? 0;
      held.net += (tally.netMinor[place] ?? 0) / minor;
      held.to = businessDate;
      sold.set(number, held);
    }
  }
  return byFoldedName([...sold].map(([number, sales]) => [texts.textOf(number), sales]));
}

/** A till may write a name in capitals one week and not the next. */
function byFoldedName(sold: readonly (readonly [string, RungSales])[]): Map<string, RungSales> {
  const byName = new Map<string, RungSales>();
  for (const [name, sales] of sold) {
    const held = byName.get(foldName(name));
    byName.set(
      foldName(name),
      held === undefined
        ? sales
        : {
            quantity: held.quantity + sales.quantity,
            net: held.net + sales.net,
            from: earlier(held.from, sales.from),
            to: later(held.to, sales.to),
          },
    );
  }
  return byName;
}

function earlier(one: BusinessDate, other: BusinessDate): BusinessDate {
  return one <= other ? one : other;
}

function later(one: BusinessDate, other: BusinessDate): BusinessDate {
  return one >= other ? one : other;
}
