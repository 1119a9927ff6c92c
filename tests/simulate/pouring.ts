import { cutOf, type Day, type SimDrink, versionOn } from "./catalogue.ts";
import { faultsIn } from "./faults.ts";
import { canMake, driftOf, makeBatch } from "./kitchen.ts";
import { type Ask, serveAsks } from "./recipe.ts";
import { available, type Bar, type Boards, isFromTheTap, noteVariance, plant, weekOf } from "./state.ts";
import type { FlowOut } from "./stockroom.ts";

/** Topping up by eye varies more than any measured pour. */
const TOP_UP_SD = 0.12;
/** No serve is begun unless this much of what it asks is there: pours run over. */
const MARGIN = 1.7;

export type Moment = { day: Day; minutes: number };

/** What a serve really gets; differs from the book while an older spec is still poured. */
export function realAsks(bar: Bar, drink: SimDrink, day: Day, modifiers: readonly string[]): readonly Ask[] {
  const [old] = faultsIn(bar.faults, "older-spec", weekOf(day)).filter((fault) => fault.drink === drink.name);
  const current = versionOn(drink.versions, day);
  const before = drink.versions.filter(({ fromDay }) => fromDay < (current?.fromDay ?? 0)).at(-1);
  const made = old === undefined || before === undefined ? drink : { ...drink, versions: [before] };
  const habit = bar.catalogue.topUpHabit ?? 1;
  return serveAsks({ catalogue: bar.catalogue, drink: made, day, modifiers }).map((ask) =>
    ask.how === "topped" ? { ...ask, amount: ask.amount * habit } : ask,
  );
}

/** Whether so many serves can be made; presses more juice in mid-service where that is all that lacks. */
export function canServe(
  bar: Bar,
  boards: Boards,
  asks: readonly Ask[],
  serves: number,
  moment: Moment,
): boolean {
  return asks.every(({ how, item, amount }) => {
    if (isFromTheTap(bar, item)) return true;
    const need = amount * serves * MARGIN;
    if (how === "cut") {
      const source = cutOf(bar.catalogue, item, moment.day)?.source ?? "";
      const pieces = boards.real.piecesWith(source, item, need) + boards.lost.pieces(source);
      return bar.stockroom.stock(source) >= pieces + 0.5;
    }
    return available(bar, boards, item) >= need || pressMore(bar, boards, item, need, moment);
  });
}

function pressMore(bar: Bar, boards: Boards, item: string, need: number, { day, minutes }: Moment): boolean {
  const prep = bar.catalogue.preps.find(({ name, versions }) => name === item && versions.length === 0);
  if (prep === undefined) return false;
  const makeMl = Math.ceil(need / prep.stepMl + 4) * prep.stepMl;
  if (!canMake(bar, boards, prep, makeMl, day)) return false;
  makeBatch(bar, boards, { prep, makeMl, day, minutes });
  return true;
}

/** Pours one serve; every pour errs by its kind's noise. */
export function pourServe(
  bar: Bar,
  boards: Boards,
  { asks, drink, flow }: { asks: readonly Ask[]; drink: string; flow: FlowOut },
  day: Day,
): void {
  const board = flow === "losses" ? boards.lost : boards.real;
  for (const ask of asks) {
    if (ask.how === "cut") board.ask(ask.item, ask.amount, { ease: cuttingEase(bar, ask.item, day) });
    else if (!isFromTheTap(bar, ask.item)) pourOne(bar, ask, { drink, flow }, day);
  }
}

function pourOne(bar: Bar, ask: Ask, { drink, flow }: { drink: string; flow: FlowOut }, day: Day): void {
  const item = substituted(bar, ask, drink, day);
  const sd = pourSd(bar, ask);
  const meant = ask.amount * Math.max(0, 1 + sd * bar.random.pours.normal());
  noteVariance(bar, item, (ask.amount * sd) ** 2);
  const generous = faultsIn(bar.faults, "over-pour", weekOf(day)).find((fault) => fault.item === item);
  const wanted = meant * (1 + (generous?.share ?? 0));
  const poured = Math.min(wanted, bar.stockroom.stock(item));
  bar.stockroom.take(item, poured, flow);
  if (generous !== undefined && poured > meant) {
    plant(bar, day, { kind: "over-pour", what: item, size: poured - meant, unit: "ml" });
  }
}

function pourSd(bar: Bar, { how, item }: Ask): number {
  if (how === "topped") return TOP_UP_SD;
  const { base, pour } = bar.itemOf.get(item) ?? {};
  if (base !== "ml" || pour === "measured") return 0;
  return pour === "free" ? bar.noise.pourFree : bar.noise.pourJigger;
}

function substituted(bar: Bar, { item, amount }: Ask, drink: string, day: Day): string {
  const swap = faultsIn(bar.faults, "poured-for-another", weekOf(day)).find(
    (fault) => fault.drink === drink && fault.spec === item,
  );
  if (swap === undefined || bar.stockroom.stock(swap.poured) < amount * MARGIN) return item;
  if (!bar.random.sundry.chance(swap.share)) return item;
  plant(bar, day, { kind: "poured-for-another", what: [item, swap.poured], size: amount, unit: "ml" });
  return swap.poured;
}

/** One day's cutting: the same hand and the same box of fruit all day. */
function cuttingEase(bar: Bar, gives: string, day: Day): number {
  const key = `${day}/${gives}`;
  const known = bar.cuttingEase.get(key);
  if (known !== undefined) return known;
  const ease = (1 + bar.noise.yield * bar.random.cuts.normal()) * driftOf(bar, gives, day);
  bar.cuttingEase.set(key, ease);
  return ease;
}
