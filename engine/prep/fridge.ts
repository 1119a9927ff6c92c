import type { Facts } from "#engine/facts.ts";
import { afterLoss, afterUse, byAge, type Layer, layersOfCount } from "#engine/prep/layers.ts";
import { shelfLifeDays, useBy } from "#engine/prep/use-by.ts";
import { batchAsks, lossAsks, saleAsks } from "#engine/sales/asks.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { type Divider, dividerAt, type When } from "#engine/sales/when.ts";
import type { Movement } from "#engine/stock/balance.ts";
import type { Holding } from "#engine/stock/counts.ts";
import { isBetween, lastHoldings } from "#engine/stock/on-hand.ts";
import { addDays, type BusinessDate, type Instant } from "#engine/time.ts";

/** The stock of one prep, batch by batch, oldest first. */
export type PrepStock = {
  layers: Layer[];
  /** What the figures rest on: a count, only the batches on record, or nothing. */
  basis: "count" | "batches" | "none";
};

/** Never counted and no shelf life: batches this old no longer say what is on the shelf. */
const DAYS_TRUSTED = 30;

type Day = { used: number; lost: number };

/**
 * What stands of each prep at a moment, batch by batch: the last whole count laid to batches, then day by day what
 * was made and came in, less what the drinks, other batches and losses took.
 *
 * It sums to `onHand` as long as stock is in date and never runs below nothing. A prep never counted starts from the
 * batches of its last shelf life: they are known to have been made, and older ones no longer serve.
 */
export function prepStock(
  facts: Facts,
  sales: readonly SaleGroup[],
  { preps, at }: { preps: readonly string[]; at: Instant },
): Map<string, PrepStock> {
  const { catalogue } = facts;
  const counted = lastHoldings(facts, at);
  const until = dividerAt(at, catalogue.venue);
  const since = new Map(preps.map((prep) => [prep, startOf(facts, prep, counted.get(prep), until)]));
  const days = usePerDay(facts, sales, since, until);
  return new Map(
    preps.map((prep) => {
      const from = since.get(prep) ?? until;
      const own = days.get(prep) ?? new Map<BusinessDate, Day>();
      return [prep, stockOf(facts, prep, { holding: counted.get(prep), from, until, days: own })];
    }),
  );
}

function startOf({ catalogue }: Facts, prep: string, holding: Holding | undefined, until: Divider): Divider {
  if (holding !== undefined) return dividerAt(holding.at, catalogue.venue);
  const trusted = Math.min(shelfLifeDays(catalogue, prep, until.businessDate) ?? DAYS_TRUSTED, DAYS_TRUSTED);
  const date = addDays(until.businessDate, -Math.ceil(trusted));
  return { at: `${date}T00:00:00Z`, businessDate: date, untimedUntil: addDays(date, -1) };
}

/** What went of each prep on each business day between its own start and the moment. */
function usePerDay(
  facts: Facts,
  sales: readonly SaleGroup[],
  since: ReadonlyMap<string, Divider>,
  until: Divider,
): Map<string, Map<BusinessDate, Day>> {
  const { catalogue, book } = facts;
  const first = [...since.values()].map(({ untimedUntil }) => untimedUntil).sort()[0];
  if (first === undefined) return new Map();
  const recent = sales.filter((sale) => sale.businessDate >= first);
  const days = new Map<string, Map<BusinessDate, Day>>();
  const add = (item: string, when: When, key: keyof Day, amount: number) => {
    const start = since.get(item);
    if (start === undefined || !isBetween(when, start, until)) return;
    const own = days.get(item) ?? new Map<BusinessDate, Day>();
    const day = own.get(when.businessDate) ?? { used: 0, lost: 0 };
    day[key] += amount;
    days.set(item, own.set(when.businessDate, day));
  };
  for (const ask of [
    ...saleAsks(catalogue, recent).asks,
    ...batchAsks(catalogue, book),
    ...lossAsks(catalogue, book.losses),
  ]) {
    const key = ask.kind === "loss" ? "lost" : "used";
    for (const { item, amount } of ask.bill.items) add(item, ask, key, ask.times * amount);
  }
  return days;
}

function stockOf(
  facts: Facts,
  prep: string,
  {
    holding,
    from,
    until,
    days,
  }: { holding: Holding | undefined; from: Divider; until: Divider; days: Map<BusinessDate, Day> },
): PrepStock {
  const moved = facts.movements.filter(({ item }) => item === prep);
  const came = moved
    .filter(({ kind }) => kind !== "transferredOut")
    .map((movement) => asLayer(facts, movement));
  const sent = moved.filter(({ kind, at }) => kind === "transferredOut" && at >= from.at && at < until.at);
  for (const { at, quantity } of sent) addSent(days, businessDateOf(at, facts.catalogue.venue), quantity);
  const opening = holding === undefined ? [] : openingLayers(facts, prep, holding, came);
  const later = came.filter(({ madeAt }) => madeAt >= from.at && madeAt < until.at).sort(byAge);
  const layers = throughDays(opening, later, days);
  const basis = holding !== undefined ? "count" : later.length > 0 ? "batches" : "none";
  return { layers, basis };
}

function addSent(days: Map<BusinessDate, Day>, date: BusinessDate, quantity: number): void {
  const day = days.get(date) ?? { used: 0, lost: 0 };
  days.set(date, { ...day, used: day.used + quantity });
}

function openingLayers(facts: Facts, prep: string, holding: Holding, came: readonly Layer[]): Layer[] {
  const before = came.filter(({ madeAt }) => madeAt < holding.at);
  const firstFound = facts.counts.flatMap((count) => count.holdings.get(prep)?.at ?? [])[0] ?? holding.at;
  const firstMade = before.map(({ madeAt }) => madeAt).sort()[0];
  const oldestAt = firstMade !== undefined && firstMade < firstFound ? firstMade : firstFound;
  const oldest = layerAt(facts, prep, oldestAt, holding.quantity);
  return layersOfCount(Math.max(0, holding.quantity), before, oldest);
}

/** Day by day: what was made comes first, then what was used of it, then what was lost. */
function throughDays(opening: Layer[], made: readonly Layer[], days: Map<BusinessDate, Day>): Layer[] {
  const dates = [...new Set([...days.keys(), ...made.map(({ madeOn }) => madeOn)])].sort();
  let layers = opening;
  for (const date of dates) {
    const day = days.get(date) ?? { used: 0, lost: 0 };
    layers = [...layers, ...made.filter(({ madeOn }) => madeOn === date)];
    layers = afterLoss(afterUse(layers, day.used, date), day.lost, date);
  }
  return layers;
}

function asLayer(facts: Facts, { item, at, quantity }: Movement): Layer {
  return layerAt(facts, item, at, quantity);
}

function layerAt({ catalogue }: Facts, prep: string, madeAt: Instant, quantity: number): Layer {
  const madeOn = businessDateOf(madeAt, catalogue.venue);
  const date = useBy(madeOn, shelfLifeDays(catalogue, prep, madeOn));
  return { madeOn, madeAt, orOlder: false, quantity, useBy: date };
}
