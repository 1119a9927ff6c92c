import { stamp } from "./calendar.ts";
import { type Day, inBase } from "./catalogue.ts";
import { faultsIn } from "./faults.ts";
import { menuOn } from "./mean-use.ts";
import { canServe, pourServe, realAsks } from "./pouring.ts";
import {
  available,
  type Bar,
  type Boards,
  containerOf,
  dateOf,
  itemNamed,
  plant,
  type Row,
  weekOf,
} from "./state.ts";

type Loss = { kind: string; what: string; amount: number; unit: string; note?: string };

function writeLoss(bar: Bar, day: Day, loss: Loss): void {
  const at = stamp(dateOf(bar, day), 23 * 60 + bar.random.sundry.whole(0, 80));
  const row: Row = {
    at,
    kind: loss.kind,
    what: loss.what,
    amount: loss.amount,
    unit: loss.unit,
    by: "bar",
    note: loss.note ?? "",
  };
  bar.records.losses.push(row);
}

/** A day's spills, comps, tastings, breakages, fruit gone soft, and bottles lent. */
export function runSundry(bar: Bar, boards: Boards, day: Day): void {
  const { spillsPerWeek, compsPerWeek, tastingsPerWeek, breakagesPerQuarter } = bar.catalogue.losses;
  const times = (perDay: number, act: () => void) => {
    for (let left = bar.random.sundry.poisson(perDay); left > 0; left -= 1) act();
  };
  times(spillsPerWeek / 7, () => spill(bar, day));
  times(compsPerWeek / 7, () => comp(bar, boards, day));
  times(tastingsPerWeek / 7, () => taste(bar, day));
  times(breakagesPerQuarter / 91, () => breakOne(bar, day));
  if (day % 7 === 6) throwSoftFruit(bar, boards, day);
  lend(bar, day);
  breakUnseen(bar, day);
}

function spirits(bar: Bar, categories: readonly string[]): string[] {
  return bar.catalogue.items.filter(({ category }) => categories.includes(category)).map(({ name }) => name);
}

function spill(bar: Bar, day: Day): void {
  pourAway(bar, day, {
    kind: "spill",
    what: bar.random.sundry.pick(spirits(bar, ["spirit", "liqueur"])),
    ounces: 1.5,
  });
}

function taste(bar: Bar, day: Day): void {
  const what = bar.random.sundry.pick(spirits(bar, ["wine", "spirit"]));
  pourAway(bar, day, { kind: "tasting", what, ounces: 0.5 });
}

function pourAway(
  bar: Bar,
  day: Day,
  { kind, what, ounces }: { kind: string; what: string; ounces: number },
): void {
  const amountMl = inBase(ounces, "oz");
  if (bar.stockroom.stock(what) < amountMl) return;
  bar.stockroom.take(what, amountMl, "losses");
  writeLoss(bar, day, { kind, what, amount: ounces, unit: "oz" });
}

/** A drink given away or sent back: poured like any other, written down as a loss. */
function comp(bar: Bar, boards: Boards, day: Day): void {
  const menu = menuOn(bar.catalogue, day).flatMap((sold) => (sold.kind === "drink" ? [sold.drink] : []));
  const drink = bar.random.sundry.pick(menu);
  const asks = realAsks(bar, drink, day, []);
  if (!canServe(bar, boards, asks, 1, { day, minutes: 23 * 60 })) return;
  pourServe(bar, boards, { asks, drink: drink.name, flow: "losses" }, day);
  writeLoss(bar, day, {
    kind: bar.random.sundry.pick(["comp", "staff", "waste"]),
    what: drink.name,
    amount: 1,
    unit: "serve",
  });
}

function breakOne(bar: Bar, day: Day): void {
  const what = bar.random.sundry.pick(spirits(bar, ["spirit", "liqueur", "mixer"]));
  const item = itemNamed(bar, what);
  const { size } = containerOf(item);
  if (bar.stockroom.stock(what) < 2 * size) return;
  bar.stockroom.take(what, size, "losses");
  writeLoss(bar, day, { kind: "breakage", what, amount: size, unit: item.base, note: "dropped" });
}

function throwSoftFruit(bar: Bar, boards: Boards, day: Day): void {
  for (const what of bar.catalogue.losses.produceWaste) {
    const pieces = Math.min(bar.random.sundry.whole(0, 3), Math.floor(available(bar, boards, what) - 1));
    if (pieces < 1) continue;
    bar.stockroom.take(what, pieces, "losses");
    writeLoss(bar, day, { kind: "waste", what, amount: pieces, unit: "each", note: "soft" });
  }
}

function lend(bar: Bar, day: Day): void {
  for (const { direction, place, item, amount, unit } of bar.catalogue.transfers.filter(
    (one) => one.day === day,
  )) {
    const inBaseUnits = inBase(amount, unit);
    if (direction === "in") bar.stockroom.add(item, inBaseUnits, "transferredIn");
    else if (bar.stockroom.stock(item) < inBaseUnits * 1.2) continue;
    else bar.stockroom.take(item, inBaseUnits, "transferredOut");
    bar.records.transfers.push({
      at: stamp(dateOf(bar, day), 15 * 60),
      direction,
      place,
      item,
      amount,
      unit,
    });
  }
}

/** Planted: containers that broke on a Friday and were never written down. */
function breakUnseen(bar: Bar, day: Day): void {
  if (day % 7 !== 4) return;
  for (const { item, containers } of faultsIn(bar.faults, "breakage", weekOf(day))) {
    const { size } = containerOf(itemNamed(bar, item));
    const broken = Math.min(containers, Math.floor(bar.stockroom.stock(item) / size));
    if (broken < 1) throw new Error(`there is no full ${item} to break on day ${day}`);
    bar.stockroom.take(item, broken * size, "untold");
    plant(bar, day, { kind: "breakage", what: item, size: broken, unit: "container" });
  }
}
