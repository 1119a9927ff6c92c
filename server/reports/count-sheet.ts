import { baseAmount, type Catalogue, groupBy } from "#engine/catalogue.ts";
import { temperatureOfC } from "#engine/measure/area-temperature.ts";
import { levelAt20 } from "#engine/measure/level-temperature.ts";
import { OutOfRangeError } from "#engine/measure/range.ts";
import { foldName } from "#engine/name.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { foundIn } from "#engine/stock/holding.ts";
import type { Item } from "#engine/stock/item.ts";
import type { CountRow } from "#engine/stock/movement.ts";
import { onHand } from "#engine/stock/on-hand.ts";
import { packsInForce } from "#engine/stock/pack.ts";
import type { Venue } from "#engine/venue.ts";
import type { World } from "#server/world.ts";

const NO_AREA = "Elsewhere";

/** What stands in each area in shelf order; counted items that no area names come last, together. */
export async function countSheetFor(world: Pick<World, "facts" | "lastMoment" | "salesBetween">) {
  const { facts, lastMoment } = world;
  const { book, catalogue } = facts;
  const held =
    lastMoment === null ? new Map() : onHand(facts, await world.salesBetween({ at: lastMoment }), lastMoment);
  const areaNames = new Set([...book.areas, ...book.counts].map(({ area }) => area));
  const placed = new Set(book.areas.map(({ item }) => item));
  const loose = [...catalogue.items.values()].filter(
    ({ name, stocked }) =>
      stocked && !placed.has(name) && (catalogue.packs.has(name) || facts.dividers.has(name)),
  );
  const shelves = [
    ...book.areas,
    ...loose.map(({ name }, index) => ({ area: NO_AREA, item: name, shelf: index + 1 })),
  ];
  const date = lastMoment === null ? "9999-12-31" : businessDateOf(lastMoment, catalogue.venue);
  const rowsByPlace = groupBy(book.counts, (row) => JSON.stringify([row.area, row.item]));
  const rowsAt = (area: string, item: string) => rowsByPlace.get(JSON.stringify([area, item])) ?? [];
  const shelvesByItem = groupBy(book.areas, (shelf) => shelf.item);
  // Once an item, not once for each of its areas.
  const mostSeenByItem = new Map(
    [...shelvesByItem].map(([item, own]) => [
      item,
      Object.fromEntries(own.map(({ area }) => [area, mostIn(catalogue, rowsAt(area, item))])),
    ]),
  );
  return {
    /** The moment the expected figures stand for. */
    at: lastMoment,
    areas: [...groupBy(shelves, (shelf) => shelf.area)].map(([area, own]) => ({
      area,
      items: [...own]
        .sort((a, b) => a.shelf - b.shelf)
        .map(({ item, shelf }) => {
          const facts = catalogue.items.get(item);
          const last = rowsAt(area, item).at(-1);
          return {
            item,
            shelf,
            base: facts?.base ?? "each",
            category: facts?.category ?? "",
            inHouse: facts?.inHouse ?? false,
            atCold: facts === undefined ? {} : atCold(facts, catalogue.venue, areaNames),
            densityGPerMl: facts?.densityGPerMl ?? null,
            pieceG: facts?.pieceG ?? null,
            packs: packsInForce(catalogue, item, date).map((pack) => ({
              pack: pack.pack,
              size: baseAmount(catalogue, pack),
              emptyG: pack.emptyG,
              fullG: pack.fullG,
              gtin: pack.gtin,
            })),
            areas: shelvesByItem.get(item)?.length ?? 0,
            /** By area, in base units; null where too few counts were held to call any figure the most. */
            mostSeen: mostSeenByItem.get(item) ?? {},
            lastCount:
              last === undefined
                ? null
                : {
                    full: last.full,
                    parts: last.parts,
                    grossG: last.grossG,
                    amount: last.amount,
                    unit: last.unit,
                    at: last.at,
                  },
            /** Of the item in all its areas together. */
            expectedQty: held.get(item)?.quantity ?? null,
            expectedSd: held.get(item)?.sd ?? null,
          };
        }),
    })),
  };
}

/** Fewer counts than this do not show how much an area may hold: a month of weekly ones. */
const COUNTS_TO_JUDGE = 4;

/** The most that any count found of an item in one area; null after fewer than four counts there. */
function mostIn(catalogue: Catalogue, rows: readonly CountRow[]): number | null {
  const counts = [...groupBy(rows, ({ count }) => foldName(count)).values()];
  if (counts.length < COUNTS_TO_JUDGE) return null;
  const quantities = counts.map((own) =>
    own.reduce(
      (sum, row) => sum + foundIn(catalogue, row, businessDateOf(row.at, catalogue.venue)).quantity,
      0,
    ),
  );
  return Math.max(...quantities);
}

/** By cold area: how much of an item at 20 °C one ml is that is seen there; an area where it cannot be reckoned is left out. */
function atCold(item: Item, venue: Venue, areas: ReadonlySet<string>): Record<string, number> {
  const factors: Record<string, number> = {};
  for (const area of areas) {
    const temperatureC = temperatureOfC(venue, area);
    if (temperatureC === undefined) continue;
    try {
      factors[area] = levelAt20(item, temperatureC);
    } catch (error) {
      // A spirit that would be ice: the check of the count says so when a level of it is entered.
      if (!(error instanceof OutOfRangeError)) throw error;
    }
  }
  return factors;
}
