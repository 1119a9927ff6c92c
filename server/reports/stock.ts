import { baseAmount } from "#engine/catalogue.ts";
import { unitCosts } from "#engine/costing/unit-cost.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { onHand } from "#engine/stock/on-hand.ts";
import { packsInForce } from "#engine/stock/pack.ts";
import { orderFor } from "#server/reports/order.ts";
import { momentOf, type World } from "#server/world.ts";

/** What should stand on the shelves at the book's last moment, with its value and its par. */
export async function stockFor(world: World) {
  const { facts } = world;
  const { catalogue, book } = facts;
  const at = momentOf(world);
  const date = businessDateOf(at, catalogue.venue);
  const held = onHand(facts, await world.salesBetween({ at }), at);
  const costs = unitCosts(facts, at);
  const order = await orderFor(world, { at });
  const planned = new Map(order.suppliers.flatMap(({ lines }) => lines.map((line) => [line.item, line])));
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
          par: planned.get(name)?.par ?? null,
          expectedUse: planned.get(name)?.expectedUse ?? null,
          areas: areas.get(name) ?? [],
        },
      ];
    }),
  };
}
