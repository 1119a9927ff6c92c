import { foldName } from "#engine/name.ts";
import { type AtPar, atPar } from "#engine/orders/reckoned-item.ts";
import { InputError } from "#server/input-error.ts";
import { orderFor } from "#server/reports/order.ts";
import { momentOf, type World } from "#server/world.ts";

/** What a par would mean beside the computed one; `money` in major units, standing when filled up to it. */
export type ParEffect = {
  item: string;
  par: number;
  computed: number;
  at: AtPar;
  atComputed: AtPar;
};

/** What a par set by hand would change, before it is set: the chance of running out, and the money in stock. */
export async function parEffectFor(
  world: World,
  { item, par }: { item: string; par: number },
): Promise<ParEffect> {
  const { items } = await orderFor(world, { at: momentOf(world) });
  const known = items.find((one) => foldName(one.item) === foldName(item));
  if (known === undefined)
    throw new InputError(
      `item: nothing can be reckoned of "${item}"; it is counted, used and bought from nobody known.`,
    );
  const { demand, isCount, costPerBase, parComputed, atPar: standing } = known;
  return {
    item: known.item,
    par,
    computed: parComputed,
    at: atPar({ demand, isCount }, par, costPerBase),
    atComputed: standing.computed,
  };
}
