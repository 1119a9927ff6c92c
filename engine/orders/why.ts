import type { DemandDay, ItemDemand } from "#engine/demand/item-demand.ts";
import { type Measuring, shownAmount } from "#engine/measure/shown-amount.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
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

/** How the amounts of an item are read at a venue. */
export type Read = { base: BaseUnit; venue: Measuring };

/** A smaller chance is not worth a word. */
const CHANCE_SAID = 0.005;

/** Why a line is on the order. "lasts until Thu without it; 12 % chance to run out before it can arrive" */
export function whyLine({
  through,
  runOutChance,
  days,
  spoils = 0,
  parSet = false,
  read,
}: {
  through: BusinessDate | "" | null;
  runOutChance: number;
  days: readonly Pick<DemandDay, "date">[];
  /** Base units on hand that will be past their date before they are used. */
  spoils?: number;
  /** Whether a person set the par. */
  parSet?: boolean;
  read: Read;
}): string {
  return [
    withoutIt(through, days),
    ...(runOutChance >= CHANCE_SAID
      ? [`${percent(runOutChance)} chance to run out before it can arrive`]
      : []),
    ...(spoils >= 1
      ? [`${shownAmount(spoils, read.base, read.venue)} on hand will be past its date before it is used`]
      : []),
    ...(parSet ? ["up to the par set by hand"] : []),
  ].join("; ");
}

function withoutIt(through: BusinessDate | "" | null, days: readonly Pick<DemandDay, "date">[]): string {
  if (through === "") return "does not last the first day without it";
  if (through !== null) return `lasts until ${weekdayOf(through)} without it`;
  const last = days.at(-1)?.date;
  return `lasts past ${last === undefined ? "the next delivery" : weekdayOf(last)} on the average, but not surely`;
}

/**
 * Why a par is what it is. "9 trading days until Fri 2026-12-04, 95 % sure: 2100 ml on the average and 640 ml to be safe"
 *
 * Stock that spoils before lasts for its shelf life instead. A par set by hand says so, and what was computed.
 */
export function parWhy({
  position: { days, demand, parComputed, parSet, serviceLevel, isSpoilt },
  until,
  shelfLifeDays,
  parReason,
  read,
}: {
  position: Pick<Position, "days" | "demand" | "parComputed" | "parSet" | "serviceLevel" | "isSpoilt">;
  until: BusinessDate | null;
  shelfLifeDays: number | null;
  parReason: string;
  read: Read;
}): string {
  const count = days.length === 1 ? "1 trading day" : `${days.length} trading days`;
  const safety = Math.max(0, parComputed - demand.mean);
  const amountText = (amount: number) => shownAmount(amount, read.base, read.venue);
  const computed = `${overWhat(count, isSpoilt ? shelfLifeDays : null, until)}, ${percent(serviceLevel)} sure: ${amountText(demand.mean)} on the average and ${amountText(safety)} to be safe`;
  if (parSet === null) return computed;
  return parReason === ""
    ? `set by hand; computed ${amountText(parComputed)}: ${computed}`
    : `set by hand (${parReason}); computed ${amountText(parComputed)}: ${computed}`;
}

/** The days a par is for: up to the next delivery, or as long as the item keeps. */
function overWhat(count: string, keepsDays: number | null, until: BusinessDate | null): string {
  if (keepsDays === 1) return `${count}, for it keeps 1 day`;
  if (keepsDays !== null) return `${count}, for it keeps ${keepsDays} days`;
  return until === null ? count : `${count} until ${weekdayOf(until)} ${until}`;
}

function percent(chance: number): string {
  if (chance > 0 && chance < 0.005) return "under 1 %";
  if (chance < 1 && chance > 0.995) return "over 99 %";
  return `${Math.round(chance * 100)} %`;
}
