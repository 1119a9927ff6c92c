import { baseAmount, groupBy } from "#engine/catalogue.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { onHand } from "#engine/stock/on-hand.ts";
import { packsInForce } from "#engine/stock/pack.ts";
import type { World } from "#server/world.ts";

const NO_AREA = "Elsewhere";

/** What stands in each area in shelf order; counted items that no area names come last, together. */
export async function countSheetFor(world: World) {
  const { facts, lastMoment } = world;
  const { book, catalogue } = facts;
  const held =
    lastMoment === null ? new Map() : onHand(facts, await world.salesBetween({ at: lastMoment }), lastMoment);
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
  const lastRows = groupBy(facts.book.counts, (row) => JSON.stringify([row.area, row.item]));
  return {
    /** The moment the expected figures stand for. */
    at: lastMoment,
    areas: [...groupBy(shelves, (shelf) => shelf.area)].map(([area, own]) => ({
      area,
      items: [...own]
        .sort((a, b) => a.shelf - b.shelf)
        .map(({ item, shelf }) => {
          const facts = catalogue.items.get(item);
          const last = lastRows.get(JSON.stringify([area, item]))?.at(-1);
          return {
            item,
            shelf,
            base: facts?.base ?? "each",
            category: facts?.category ?? "",
            inHouse: facts?.inHouse ?? false,
            densityGPerMl: facts?.densityGPerMl ?? null,
            pieceG: facts?.pieceG ?? null,
            packs: packsInForce(catalogue, item, date).map((pack) => ({
              pack: pack.pack,
              size: baseAmount(catalogue, pack),
              emptyG: pack.emptyG,
              fullG: pack.fullG,
              gtin: pack.gtin,
            })),
            areas: book.areas.filter((shelf) => shelf.item === item).length,
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
