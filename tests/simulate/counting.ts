import { stamp } from "./calendar.ts";
import type { Day, SimItem } from "./catalogue.ts";
import { faultsIn } from "./faults.ts";
import { type Bar, containerOf, dateOf, type Row, roundTo } from "./state.ts";

const COUNT_STARTS = 10 * 60;
const MINUTES_AN_AREA = 7;
const TENTH = 0.1;
const MEASURED_STEP = 5;

/** What truly stands of an item in one area. */
type Holding = { full: number; open: number[]; loose: number };

/** The Monday count: every item in every area it has, as a person with a clipboard reads it. */
export function takeCount(bar: Bar, day: Day): void {
  const count = dateOf(bar, day);
  // Counts in mid-week carry no planted trouble.
  const closesWeek = day % 7 === 0 ? day / 7 : 0;
  bar.catalogue.areas.forEach((area, turn) => {
    const at = stamp(count, COUNT_STARTS + turn * MINUTES_AN_AREA);
    const rows = bar.catalogue.items
      .filter(({ areas }) => areas.includes(area))
      .map((item) => ({ item, row: countRow(bar, item, area) }));
    const isSkipped = faultsIn(bar.faults, "area-skipped", closesWeek).some((fault) => fault.area === area);
    for (const { item, row } of rows) {
      const miscounted = isSkipped ? row : miscount(bar, item, area, row, closesWeek);
      bar.records.counts.push({
        count,
        at,
        area,
        item: item.name,
        ...(isSkipped ? noneOf(row) : miscounted),
        by: "count",
      });
    }
    if (isSkipped) plantSkipped(bar, area, closesWeek, count);
  });
}

function countRow(bar: Bar, item: SimItem, area: string): Row {
  const held = holdingIn(bar.stockroom.stock(item.name), item, area);
  if (item.method === "pieces") return { amount: readPieces(bar, held.loose), unit: "each" };
  if (item.method === "measured")
    return { amount: readMeasured(bar, held.loose, item.base), unit: item.base };
  const { pack, size } = containerOf(item);
  const row: Row = { pack, full: held.full };
  if (held.open.length === 0) return row;
  return item.method === "scale"
    ? { ...row, gross_g: held.open.map((share) => readScale(bar, item, share * size)).join(";") }
    : { ...row, part: held.open.map((share) => readTenths(bar, share)).join(";") };
}

/** How the true stock stands: the open container and a few full ones where it is poured, the rest in reserve. */
export function holdingIn(stock: number, item: SimItem, area: string): Holding {
  const isFirst = item.areas[0] === area;
  const isOnly = item.areas.length === 1;
  const kept = item.fullInFirst ?? 0;
  if (item.method === "pieces" || item.method === "measured") {
    const first = isOnly ? stock : Math.min(stock, kept);
    return { full: 0, open: [], loose: isFirst ? first : stock - first };
  }
  const { size } = containerOf(item);
  const whole = Math.floor(stock / size + 1e-9);
  const rest = Math.max(0, stock / size - whole);
  const isTwoOpen = item.twoOpen === true && whole > 0;
  const open = isTwoOpen
    ? [(rest + 1) * 0.6, (rest + 1) * 0.4].map((share) => Math.min(1, share))
    : rest > 0.001
      ? [rest]
      : [];
  if (isTwoOpen) open[1] = rest + 1 - (open[0] ?? 0);
  const full = isTwoOpen ? whole - 1 : whole;
  const first = isOnly ? full : Math.min(full, kept);
  return isFirst ? { full: first, open, loose: 0 } : { full: full - first, open: [], loose: 0 };
}

/** Noise that, with the rounding that follows, has the stated spread in all. */
function beforeRounding(sd: number, step: number): number {
  return Math.sqrt(Math.max(0, sd ** 2 - step ** 2 / 12));
}

/** An empty bottle is seen to be empty and a full one full; what is opened is read as neither. */
function readTenths(bar: Bar, share: number): number {
  if (share < 0.01 || share > 0.99) return Math.round(share);
  const seen = share + beforeRounding(bar.noise.reading, TENTH) * bar.random.counting.normal();
  return Math.min(0.95, Math.max(0.05, roundTo(seen, TENTH)));
}

function readScale(bar: Bar, item: SimItem, ml: number): number {
  const emptyG = item.packs[0]?.emptyG ?? 0;
  const grossG = emptyG + ml * (item.trueDensityGPerMl ?? 1);
  return Math.max(
    emptyG,
    Math.round(grossG + beforeRounding(bar.noise.scaleG, 1) * bar.random.counting.normal()),
  );
}

function readPieces(bar: Bar, pieces: number): number {
  if (pieces === 0) return 0;
  return Math.max(0, Math.round(pieces + beforeRounding(bar.noise.each, 1) * bar.random.counting.normal()));
}

/** Solids are weighed, liquids read in a jug. */
function readMeasured(bar: Bar, amount: number, base: string): number {
  const [sd, step] = base === "g" ? [bar.noise.scaleG, 1] : [bar.noise.ml, MEASURED_STEP];
  return Math.max(0, roundTo(amount + beforeRounding(sd, step) * bar.random.counting.normal(), step));
}

function noneOf(row: Row): Row {
  return "amount" in row ? { ...row, amount: 0 } : { pack: row.pack ?? "", full: 0 };
}

function plantSkipped(bar: Bar, area: string, week: number, count: string): void {
  const skipped = bar.catalogue.items.filter(({ areas }) => areas.includes(area));
  for (const item of skipped) {
    const held = holdingIn(bar.stockroom.stock(item.name), item, area);
    const size =
      held.loose + (held.full + held.open.reduce((sum, share) => sum + share, 0)) * containerSize(item);
    if (size > 0)
      bar.plantings.add({
        kind: "area-skipped",
        week,
        date: count,
        what: item.name,
        size,
        unit: item.base,
        count,
      });
  }
}

function containerSize(item: SimItem): number {
  return item.packs.length === 0 ? 1 : containerOf(item).size;
}

/** Planted: so many full containers too many or too few, in the item's reserve. */
function miscount(bar: Bar, item: SimItem, area: string, row: Row, week: number): Row {
  const fault = faultsIn(bar.faults, "container-miscounted", week).find((one) => one.item === item.name);
  if (fault === undefined || area !== item.areas.at(-1) || row.full === undefined) return row;
  const full = Number(row.full) + fault.sign * fault.containers;
  if (full < 0) throw new Error(`there are too few full ${item.name} to miscount in week ${week}`);
  const count = dateOf(bar, week * 7);
  bar.plantings.add({
    kind: "container-miscounted",
    week,
    date: count,
    what: item.name,
    size: fault.containers,
    unit: "container",
    sign: fault.sign,
    count,
  });
  return { ...row, full };
}
