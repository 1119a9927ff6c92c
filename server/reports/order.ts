import { foldName } from "#engine/name.ts";
import { lateLines } from "#engine/orders/check-delivery.ts";
import { isBelowMinimum, orderFrom } from "#engine/orders/order.ts";
import { type Outlook, outlookAt } from "#engine/orders/outlook.ts";
import { businessDateOf, localMinute } from "#engine/sales/read/clock.ts";
import type { Instant } from "#engine/time.ts";
import { refuseFarOff } from "#server/far-off.ts";
import { InputError } from "#server/input-error.ts";
import { localMinuteOrNull } from "#server/local-time.ts";
import { integerSolver } from "#server/solver.ts";
import { momentOf, type World } from "#server/world.ts";

export type OrderChoice = {
  at?: Instant | undefined;
  supplier?: string | undefined;
  budgetMinor?: number | undefined;
  /** Reach a supplier's minimum for the least money: worth starting the solver for, where it stays started. */
  exactMinimum?: boolean;
};

export type OrderReport = Awaited<ReturnType<typeof orderAt>>;

/** What to order from whom at a moment, by default the last of the book. Moments are the venue's local time. */
export async function orderFor(
  world: World,
  { at, supplier, budgetMinor, exactMinimum = false }: OrderChoice,
): Promise<OrderReport> {
  const moment = momentOf(world, at);
  refuseFarOff(world, businessDateOf(moment, world.facts.catalogue.venue), "at");
  const key = JSON.stringify(["order", moment, supplier, budgetMinor, exactMinimum]);
  return world.remembered(key, () => orderAt(world, moment, { supplier, budgetMinor, exactMinimum }));
}

/** All that an order at a moment is reckoned from; kept, for several reports ask for it. */
export function outlookOf(world: World, moment: Instant): Promise<Outlook> {
  return world.remembered(JSON.stringify(["outlook", moment]), async () =>
    outlookAt(world.facts, await world.salesBetween({ at: moment }), moment),
  );
}

async function orderAt(
  world: World,
  moment: Instant,
  { supplier, budgetMinor, exactMinimum }: Omit<OrderChoice, "at">,
) {
  const { venue } = world.facts.catalogue;
  const choice = {
    ...(supplier === undefined ? {} : { supplier: supplierKnown(world, supplier) }),
    ...(budgetMinor === undefined ? {} : { budgetMinor }),
  };
  const outlook = await outlookOf(world, moment);
  const first = orderFrom(outlook, choice);
  const isWorthSolving = budgetMinor !== undefined || (exactMinimum === true && isBelowMinimum(first));
  const plan = isWorthSolving ? orderFrom(outlook, { ...choice, solver: await integerSolver() }) : first;
  return {
    ...plan,
    at: localMinute(plan.at, venue),
    late: lateLines(world.facts, moment),
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
