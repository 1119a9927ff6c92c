import { baseAmount } from "#engine/catalogue.ts";
import { unitCosts } from "#engine/costing/unit-cost.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { onHand } from "#engine/stock/on-hand.ts";
import { packsInForce } from "#engine/stock/pack.ts";
import { justAfter } from "#engine/time.ts";
import { orderFor } from "#server/reports/order.ts";
import { momentOf, type World } from "#server/world.ts";

/** What should stand on the shelves at the book's last moment, with its value and its par. */
export async function stockFor(world: World) {
  const { facts } = world;
  const { catalogue, book } = facts;
  const at = momentOf(world);
  const date = businessDateOf(at, catalogue.venue);
  const held = onHand(facts, await world.salesBetween({ at }), at);
  const costs = unitCosts(facts, justAfter(at));
  const order = await orderFor(world, { at });
  const reckoned = new Map(order.items.map((one) => [one.item, one]));
  const areas = new Map<string, string[]>();
  for (const { area, item } of book.areas) areas.set(item, [...(areas.get(item) ?? []), area]);
  return {
    at,
    items: [...catalogue.items.values()].flatMap(({ name, category, base }) => {
      const found = held.get(name);
      if (found === undefined) return [];
      const [pack] = packsInForce(catalogue, name, date);
      const costPerBase = costs.get(name) ?? null;
      return [
        {
          item: name,
          category,
          base,
          ...found,
          packName: pack?.pack ?? null,
          containerSize: pack === undefined ? null : baseAmount(catalogue, pack),
          costPerBase,
          value: costPerBase === null ? null : Math.max(0, found.quantity) * costPerBase,
          par: reckoned.get(name)?.par ?? null,
          parInPacks: reckoned.get(name)?.parInPacks ?? null,
          parWhy: reckoned.get(name)?.parWhy ?? null,
          expectedUse: reckoned.get(name)?.expectedUse ?? null,
          runOutChance: reckoned.get(name)?.runOutChance ?? null,
          areas: areas.get(name) ?? [],
        },
      ];
    }),
  };
}
