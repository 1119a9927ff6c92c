import type { Day, SimDrink } from "./catalogue.ts";
import { type Fault, faultsIn } from "./faults.ts";
import { ringsOf } from "./mean-use.ts";
import type { Moment } from "./pouring.ts";
import { serveAsks } from "./recipe.ts";
import { type Bar, type Boards, expectUse, plant, type RungLine, weekOf } from "./state.ts";

/** What the till adds to a price for its modifiers; one of several rows of a modifier states it. */
export function charges(bar: Bar, modifiers: readonly string[]): number {
  return bar.catalogue.modifiers
    .filter(({ modifier }) => modifiers.includes(modifier))
    .reduce((sum, { charge = 0 }) => sum + charge, 0);
}

/** Rings what was made, unless trouble was planted at the till. */
export function ringDrink(
  bar: Bar,
  boards: Boards,
  {
    drink,
    line,
    serves,
    modifiers,
  }: { drink: SimDrink; line: RungLine; serves: number; modifiers: string[] },
): void {
  const trouble = tillTrouble(bar, drink.name, line.day, serves);
  if (trouble?.kind === "not-rung") {
    plant(bar, line.day, { kind: "not-rung", what: drink.name, size: serves, unit: "serve" });
    return;
  }
  if (trouble?.kind === "unmapped-sale") {
    plant(bar, line.day, { kind: "unmapped-sale", what: trouble.ringName, size: serves, unit: "serve" });
    bar.rung.push({ ...line, ring: trouble.ringName, modifiers: [], quantity: serves });
    return;
  }
  if (trouble?.kind === "rung-for-another") {
    plant(bar, line.day, {
      kind: "rung-for-another",
      what: [trouble.rung, trouble.made],
      size: serves,
      unit: "serve",
    });
    const rung = bar.catalogue.drinks.find(({ name }) => name === trouble.rung);
    if (rung === undefined) throw new Error(`${trouble.rung} is no drink`);
    const money = rung.price * serves;
    bar.rung.push({
      ...line,
      ring: ringsOf(rung)[0]?.name ?? rung.name,
      modifiers: [],
      quantity: serves,
      gross: money,
      net: money,
    });
    expectServes(bar, boards, rung, serves, { day: line.day, modifiers: [] });
    return;
  }
  bar.rung.push(line);
  expectServes(bar, boards, drink, serves, { day: line.day, modifiers });
  if (faultsIn(bar.faults, "older-spec", weekOf(line.day)).some((fault) => fault.drink === drink.name)) {
    plant(bar, line.day, { kind: "older-spec", what: drink.name, size: serves, unit: "serve" });
  }
  if (bar.faults.some((fault) => fault.kind === "unit-slip" && fault.drink === drink.name)) {
    plant(bar, line.day, { kind: "unit-slip", what: drink.name, size: serves, unit: "serve" });
  }
}

type TillTrouble = Extract<Fault, { kind: "not-rung" | "unmapped-sale" | "rung-for-another" }>;

function tillTrouble(bar: Bar, drink: string, day: Day, serves: number): TillTrouble | undefined {
  const week = weekOf(day);
  const planned: TillTrouble[] = [
    ...faultsIn(bar.faults, "not-rung", week).filter((fault) => fault.drink === drink),
    ...faultsIn(bar.faults, "unmapped-sale", week).filter((fault) => fault.drink === drink),
    ...faultsIn(bar.faults, "rung-for-another", week).filter((fault) => fault.made === drink),
  ];
  return planned.find((fault) => {
    const done = bar.plantings
      .all()
      .filter((planted) => planted.kind === fault.kind && planted.week === week);
    const size =
      done.filter(({ what }) => JSON.stringify(what) === JSON.stringify(subjectOf(fault)))[0]?.size ?? 0;
    return size + serves <= fault.serves && bar.random.sundry.chance(0.6);
  });
}

function subjectOf(fault: TillTrouble): string | [string, string] {
  if (fault.kind === "rung-for-another") return [fault.rung, fault.made];
  return fault.kind === "unmapped-sale" ? fault.ringName : fault.drink;
}

/** Rung by mistake, and taken back before anything was poured. */
export function ringVoid(bar: Bar, line: RungLine): true {
  bar.rung.push(line, {
    ...line,
    minutes: line.minutes + 2,
    quantity: -line.quantity,
    gross: -line.gross,
    net: -line.net,
    isVoid: true,
  });
  return true;
}

export function newLine(
  bar: Bar,
  { day, minutes }: Moment,
  {
    ring,
    modifiers,
    quantity,
    price,
  }: { ring: string; modifiers: string[]; quantity: number; price: number },
): RungLine {
  const gross = Number((price * quantity).toFixed(2));
  const isOnTheHouse = bar.random.guests.chance(0.01);
  const till = bar.random.guests.pick(["Bar 1", "Bar 2", "Floor"]);
  const net = isOnTheHouse ? 0 : gross;
  return { day, minutes, ring, modifiers, quantity, gross, net, check: bar.next.check, till, isVoid: false };
}

export function withStray(bar: Bar, modifiers: string[]): string[] {
  const { strayModifier } = bar.catalogue;
  // Beside others it would make their whole cell unknown, and the expected use would hang on the reader.
  if (strayModifier === undefined || modifiers.length > 0 || !bar.random.guests.chance(0.003))
    return modifiers;
  return [strayModifier];
}

/** What the book will expect of serves that were rung, exact to the spec. */
function expectServes(
  bar: Bar,
  boards: Boards,
  drink: SimDrink,
  serves: number,
  { day, modifiers }: { day: Day; modifiers: readonly string[] },
): void {
  const stated = bar.book.drinks.find(({ name }) => name === drink.name) ?? drink;
  for (const { how, item, amount } of serveAsks({ catalogue: bar.book, drink: stated, day, modifiers })) {
    if (how === "cut") boards.book.ask(item, amount * serves);
    else expectUse(bar, item, amount * serves);
  }
}
