import { stamp } from "./calendar.ts";
import { cutOf, type Day, type SimPrep } from "./catalogue.ts";
import { faultsIn } from "./faults.ts";
import { prepAsks } from "./recipe.ts";
import {
  available,
  type Bar,
  type Boards,
  dateOf,
  expectUse,
  isFromTheTap,
  noteVariance,
  plant,
  roundTo,
  weekOf,
} from "./state.ts";

const PREP_STARTS = 13 * 60 + 30;

/** Morning in the prep kitchen: what is past its date goes, then each prep is made for the days it must last. */
export function runKitchen(bar: Bar, boards: Boards, day: Day): void {
  bar.catalogue.preps
    .filter((prep) => isStocked(bar, prep))
    .forEach((prep, turn) => {
      discardExpired(bar, prep, day);
      const wanted = wantedMl(bar, prep, day);
      const makeMl = affordableMl(bar, boards, prep, wanted, day);
      if (makeMl > 0) makeBatch(bar, boards, { prep, makeMl, day, minutes: PREP_STARTS + 9 * turn });
    });
}

function isStocked(bar: Bar, prep: SimPrep): boolean {
  return bar.itemOf.get(prep.name)?.stocked !== false;
}

/** Juice is given by its fruit alone. */
function isPressed(prep: SimPrep): boolean {
  return prep.versions.length === 0;
}

function discardExpired(bar: Bar, prep: SimPrep, day: Day): void {
  const amount = bar.stockroom.madeBefore(prep.name, day - prep.shelfLifeDays);
  if (amount <= 0) return;
  bar.stockroom.take(prep.name, amount, "losses");
  const written = roundTo(amount, 5);
  if (written === 0) return;
  bar.records.losses.push({
    at: stamp(dateOf(bar, day), PREP_STARTS - 10),
    kind: "expired",
    what: prep.name,
    amount: written,
    unit: "ml",
    by: "prep",
    note: "",
  });
}

function wantedMl(bar: Bar, prep: SimPrep, day: Day): number {
  const mean = bar.meanUse(day).get(prep.name) ?? 0;
  const needOver = (days: number) =>
    Array.from({ length: days }, (_, ahead) => mean * bar.foreseen(day + ahead)).reduce(
      (sum, need) => sum + need,
      0,
    );
  const stock = bar.stockroom.stock(prep.name);
  // Juice can be pressed again in mid-service; a syrup must stand first.
  const reserve = isPressed(prep) ? 1.15 : 1.3;
  const triggerDays = Math.min(2, prep.coverDays);
  if (mean === 0 || stock >= needOver(triggerDays) * reserve) return 0;
  const steps = Math.ceil((needOver(prep.coverDays) * reserve - stock) / prep.stepMl);
  return Math.min(Math.max(1, steps) * prep.stepMl, prep.vesselMaxMl);
}

/** The largest whole number of steps that the stock of inputs allows. */
function affordableMl(bar: Bar, boards: Boards, prep: SimPrep, wanted: number, day: Day): number {
  for (let makeMl = wanted; makeMl >= prep.stepMl; makeMl -= prep.stepMl) {
    if (canMake(bar, boards, prep, makeMl, day)) return makeMl;
  }
  return 0;
}

export function canMake(bar: Bar, boards: Boards, prep: SimPrep, makeMl: number, day: Day): boolean {
  return prepAsks(bar.catalogue, prep.name, makeMl, day).every(({ how, item, amount }) => {
    if (isFromTheTap(bar, item)) return true;
    if (how !== "cut") return available(bar, boards, item) >= amount * 1.2;
    const source = cutOf(bar.catalogue, item, day)?.source ?? "";
    const asked = boards.real.piecesWith(source, item, amount * 1.3) + boards.lost.pieces(source);
    return bar.stockroom.stock(source) >= asked;
  });
}

/**
 * Makes one batch. What it yields varies by the bar's yield noise: a pressed juice takes more or less fruit,
 * a cooked prep gives more or less than its spec says.
 */
export function makeBatch(
  bar: Bar,
  boards: Boards,
  { prep, makeMl, day, minutes }: { prep: SimPrep; makeMl: number; day: Day; minutes: number },
): void {
  const ease = 1 + bar.noise.yield * bar.random.kitchen.normal();
  const madeMl = isPressed(prep) ? makeMl : roundTo(makeMl * ease, 5);

  for (const { how, item, amount } of prepAsks(bar.catalogue, prep.name, makeMl, day)) {
    if (how === "cut") {
      const group = `${item} at ${minutes}`;
      boards.real.ask(item, amount, { ease: isPressed(prep) ? ease * driftOf(bar, item, day) : 1, group });
    } else if (!isFromTheTap(bar, item)) {
      bar.stockroom.take(item, amount, "byBatches");
      noteVariance(bar, item, (amount * bar.noise.yield) ** 2);
    }
  }
  bar.stockroom.add(prep.name, madeMl, "made", day);
  logBatch(bar, boards, { prep, madeMl, day, minutes });
}

function logBatch(
  bar: Bar,
  boards: Boards,
  { prep, madeMl, day, minutes }: { prep: SimPrep; madeMl: number; day: Day; minutes: number },
): void {
  const week = weekOf(day);
  const isPlanted = (kind: "batch-not-logged" | "batch-thrown-out") =>
    faultsIn(bar.faults, kind, week).some((fault) => fault.prep === prep.name) &&
    !bar.plantings
      .all()
      .some((planted) => planted.kind === kind && planted.week === week && planted.what === prep.name);

  if (isPlanted("batch-not-logged")) {
    plant(bar, day, { kind: "batch-not-logged", what: prep.name, size: madeMl, unit: "ml" });
    return;
  }
  bar.records.batches.push({
    at: stamp(dateOf(bar, day), minutes),
    prep: prep.name,
    made: madeMl,
    unit: "ml",
    by: "prep",
    note: "",
  });
  for (const { how, item, amount } of prepAsks(bar.book, prep.name, madeMl, day)) {
    if (how === "cut") boards.book.ask(item, amount);
    else expectUse(bar, item, amount);
  }
  if (bar.faults.some((fault) => fault.kind === "unit-slip" && fault.drink === prep.name)) {
    plant(bar, day, { kind: "unit-slip", what: prep.name, size: madeMl, unit: "ml" });
  }
  if (isPlanted("batch-thrown-out")) {
    bar.stockroom.take(prep.name, madeMl, "untold");
    plant(bar, day, { kind: "batch-thrown-out", what: prep.name, size: madeMl, unit: "ml" });
  }
}

/** How much more fruit a cut takes while a planted drift of its fruit lasts. */
export function driftOf(bar: Bar, gives: string, day: Day): number {
  const source = cutOf(bar.catalogue, gives, day)?.source;
  return faultsIn(bar.faults, "yield-drift", weekOf(day))
    .filter(({ fruit }) => fruit === source)
    .reduce((drift, { factor }) => drift / factor, 1);
}

/** Ends the day at the board: the pieces leave the stock, and the book's expectation is noted. */
export function clearBoards(bar: Bar, boards: Boards, day: Day): void {
  for (const source of boards.real.sources()) {
    const pieces = Math.min(boards.real.pieces(source), bar.stockroom.stock(source));
    bar.stockroom.take(source, pieces, "byCuts");
    noteVariance(bar, source, boards.real.squaredPieces(source) * bar.noise.yield ** 2);
  }
  for (const source of boards.lost.sources()) {
    bar.stockroom.take(source, Math.min(boards.lost.pieces(source), bar.stockroom.stock(source)), "losses");
  }
  for (const source of boards.book.sources()) {
    const pieces = boards.book.pieces(source);
    expectUse(bar, source, pieces);
    const drift = faultsIn(bar.faults, "yield-drift", weekOf(day)).find(({ fruit }) => fruit === source);
    if (drift !== undefined) {
      const size = pieces * Math.abs(1 / drift.factor - 1);
      plant(bar, day, { kind: "yield-drift", what: source, size, unit: "each" });
    }
  }
}
