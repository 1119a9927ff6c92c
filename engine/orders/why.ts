import type { DemandDay, ItemDemand } from "#engine/demand/item-demand.ts";
import type { Position } from "#engine/orders/order-line.ts";
import { type BusinessDate, weekdayOf } from "#engine/time.ts";

/** Stock to come, by the day it should arrive. */
export type Incoming = { expected: BusinessDate; quantity: number };

/**
 * The last business day that stock lasts through by mean demand, with what is to come; null if it outlasts the days
 * looked at, "" if it does not last the first.
 */
export function lastsThrough(
  item: string,
  stock: number,
  { days, incoming }: { days: ItemDemand["days"]; incoming: readonly Incoming[] },
): BusinessDate | "" | null {
  let left = stock;
  let through: BusinessDate | "" = "";
  let previous = "";
  for (const { date, items } of days) {
    for (const { expected, quantity } of incoming)
      if (expected > previous && expected <= date) left += quantity;
    previous = date;
    left -= items.get(item)?.mean ?? 0;
    if (left < -1e-9) return through;
    through = date;
  }
  return null;
}

/** Why a line is on the order. "lasts until Thu without it; 12 % chance to run out before the next delivery" */
export function whyLine({
  through,
  runOutChance,
  days,
}: {
  through: BusinessDate | "" | null;
  runOutChance: number;
  days: readonly Pick<DemandDay, "date">[];
}): string {
  const chance = `${percent(runOutChance)} chance to run out before the next delivery`;
  if (through === "") return `does not last the first day without it; ${chance}`;
  if (through === null) {
    const last = days.at(-1)?.date;
    return `lasts past ${last === undefined ? "the next delivery" : weekdayOf(last)} on the average, but not surely; ${chance}`;
  }
  return `lasts until ${weekdayOf(through)} without it; ${chance}`;
}

/**
 * Why a par is what it is. "9 trading days until Fri 2026-12-04, 95 % sure: 2100 on the average and 640 to be safe"
 *
 * Stock that spoils before lasts for its shelf life instead.
 */
export function parWhy({
  position: { days, demand, par, serviceLevel, isSpoilt },
  until,
  shelfLifeDays,
}: {
  position: Pick<Position, "days" | "demand" | "par" | "serviceLevel" | "isSpoilt">;
  until: BusinessDate | null;
  shelfLifeDays: number | null;
}): string {
  const count = `${days.length} trading ${days.length === 1 ? "day" : "days"}`;
  const over =
    isSpoilt && shelfLifeDays !== null
      ? `${count}, for it keeps ${shelfLifeDays} ${shelfLifeDays === 1 ? "day" : "days"}`
      : `${count}${until === null ? "" : ` until ${weekdayOf(until)} ${until}`}`;
  const safety = Math.max(0, par - demand.mean);
  return `${over}, ${percent(serviceLevel)} sure: ${rounded(demand.mean)} on the average and ${rounded(safety)} to be safe`;
}

function rounded(amount: number): string {
  return amount >= 100 ? String(Math.round(amount)) : String(Number(amount.toPrecision(2)));
}

function percent(chance: number): string {
  if (chance > 0 && chance < 0.005) return "under 1 %";
  if (chance < 1 && chance > 0.995) return "over 99 %";
  return `${Math.round(chance * 100)} %`;
}
