import { foldName } from "#engine/name.ts";
import { planOrder } from "#engine/orders/order.ts";
import type { Instant } from "#engine/time.ts";
import { InputError } from "#server/input-error.ts";
import { localMinute, localMinuteOrNull } from "#server/local-time.ts";
import { momentOf, type World } from "#server/world.ts";

export type OrderChoice = {
  at?: Instant | undefined;
  supplier?: string | undefined;
  budgetMinor?: number | undefined;
};

export type OrderReport = Awaited<ReturnType<typeof orderAt>>;

/** What to order from whom at a moment, by default the last of the book. Moments are the venue's local time. */
export async function orderFor(
  world: World,
  { at, supplier, budgetMinor }: OrderChoice,
): Promise<OrderReport> {
  const moment = momentOf(world, at);
  const key = JSON.stringify(["order", moment, supplier, budgetMinor]);
  return world.remembered(key, () => orderAt(world, moment, { supplier, budgetMinor }));
}

async function orderAt(world: World, moment: Instant, { supplier, budgetMinor }: Omit<OrderChoice, "at">) {
  const { venue } = world.facts.catalogue;
  const plan = planOrder({
    facts: world.facts,
    sales: await world.salesBetween({ at: moment }),
    at: moment,
    ...(supplier === undefined ? {} : { supplier: supplierKnown(world, supplier) }),
    ...(budgetMinor === undefined ? {} : { budgetMinor }),
  });
  return {
    ...plan,
    at: localMinute(plan.at, venue),
    suppliers: plan.suppliers.map((one) => ({
      ...one,
      orderBy: localMinuteOrNull(one.orderBy, venue),
      arrives: localMinuteOrNull(one.arrives, venue),
      coversUntil: localMinuteOrNull(one.coversUntil, venue),
    })),
  };
}

function supplierKnown(world: World, name: string): string {
  const { suppliers } = world.facts.book;
  const known = suppliers.find((supplier) => foldName(supplier.name) === foldName(name));
  if (known !== undefined) return known.name;
  const names = suppliers.map((supplier) => `"${supplier.name}"`).join(", ");
  throw new InputError(`No supplier is named "${name}". The book has ${names || "none"}.`);
}
