import { type CheckContext, refuseRepeats, wholeRows, wrong } from "#db/book/check/context.ts";
import { figureHint } from "#db/book/check/units.ts";
import { quote, quoteList } from "#db/book/quote.ts";
import type { Row } from "#db/book/sheet.ts";
import { SHEETS, VENUE_FILE } from "#db/book/sheets/all.ts";
import { didYouMean } from "#db/book/suggest.ts";
import { groupBy } from "#engine/catalogue.ts";
import { temperatureOfC } from "#engine/measure/area-temperature.ts";
import { volumeByWeight } from "#engine/measure/container.ts";
import { levelAt20 } from "#engine/measure/level-temperature.ts";
import { OutOfRangeError } from "#engine/measure/range.ts";
import { foldName } from "#engine/name.ts";
import type { Pack } from "#engine/stock/item.ts";
import type { CountRow } from "#engine/stock/movement.ts";

/** Checks counts.csv: that each row says how much was found, in words that lead to a quantity. */
export function checkCounts(context: CheckContext): void {
  const packs = groupBy(
    wholeRows(context, "packs").map(({ fact }) => fact),
    ({ item }) => item,
  );
  for (const { row, fact } of wholeRows(context, "counts")) {
    checkRow(context, row, fact, packs.get(fact.item) ?? []);
  }
  refuseRepeats(
    context,
    "counts",
    "item",
    (row) => [foldName(row.count), foldName(row.area), row.item, packMeant(row, packs.get(row.item) ?? [])],
    "this item, in this area and pack of this count,",
  );
  noticeUnknownAreas(context);
  noticeUnusedTemperatures(context);
}

/** A row that counts containers without naming their pack means the only one there is. */
function packMeant({ pack, full, parts, grossG }: CountRow, packs: readonly Pack[]): string | null {
  if (pack !== null || (full === null && parts.length === 0 && grossG.length === 0)) return pack;
  return packs[0]?.pack ?? null;
}

function checkRow(context: CheckContext, row: Row<CountRow>, fact: CountRow, packs: readonly Pack[]): void {
  const { full, parts, grossG, amount, unit } = fact;
  if (full === null && parts.length === 0 && grossG.length === 0 && amount === null) {
    const message =
      "the row counts nothing; write how many are full (0 if there is none there), or an amount";
    wrong(context, "counts", row, "full", message);
    return;
  }
  if (amount !== null && unit === null) {
    wrong(context, "counts", row, "unit", "the cell is empty; an amount needs its unit");
  } else if (amount !== null && unit !== null) {
    const trouble = context.units.trouble(fact.item, unit);
    if (trouble !== undefined) wrong(context, "counts", row, "unit", trouble);
  }
  const someFound = (full ?? 0) > 0 || parts.some((part) => part > 0);
  if (someFound || grossG.length > 0) checkContainers(context, row, fact, packs);
}

function checkContainers(
  context: CheckContext,
  row: Row<CountRow>,
  fact: CountRow,
  packs: readonly Pack[],
): void {
  const named = packs.filter(({ pack }) => fact.pack === null || pack === fact.pack);
  const item = context.units.item(fact.item);
  const isBroken = context.rows.packs.some(({ cells, isWhole }) => !isWhole && cells.item === fact.item);
  if (item === undefined || isBroken) return;
  if (named.length === 0 && item.base !== "each") {
    const message = `${quote(fact.item)} has no pack that says what a container holds; add one, or write amount and unit`;
    wrong(context, "counts", row, "pack", message);
    return;
  }
  const sizes = new Set(named.map((pack) => context.units.sizeOf(pack)));
  const choices = [...new Set(named.map(({ pack }) => pack))];
  if (choices.length > 1 && sizes.size > 1) {
    const message = `the cell is empty, but ${quote(fact.item)} comes as ${quoteList(choices)}; write which was counted`;
    wrong(context, "counts", row, "pack", message);
    return;
  }
  if (fact.grossG.length > 0) checkWeighed(context, row, fact, named);
  checkLevelInTheCold(context, row, fact);
}

/** A level says nothing of a spirit that is ice, nor of a liquid colder or warmer than its formula goes. */
function checkLevelInTheCold({ venue, ...context }: CheckContext, row: Row<CountRow>, fact: CountRow): void {
  const item = context.units.item(fact.item);
  if (item === undefined || venue === undefined || !fact.parts.some((part) => part > 0 && part < 1)) return;
  const temperatureC = temperatureOfC(venue, fact.area);
  try {
    levelAt20(item, temperatureC);
  } catch (error) {
    if (!(error instanceof OutOfRangeError)) throw error;
    const message = `in ${quote(fact.area)}, kept at ${temperatureC} °C by venue.json, a level of ${quote(fact.item)} cannot be reckoned: ${error.message} Weigh it or write an amount instead`;
    wrong({ venue, ...context }, "counts", row, "part", message);
  }
}

/** A temperature for an area that nothing stands in is likelier a slip of the pen. */
function noticeUnusedTemperatures({ venue, rows, findings }: CheckContext): void {
  const areas = [...rows.areas, ...rows.counts].flatMap(({ cells }) => cells.area ?? []);
  const known = new Map(areas.map((area) => [foldName(area), area]));
  for (const area of Object.keys(venue?.areaTemperatureC ?? {})) {
    if (known.has(foldName(area))) continue;
    const message = `no area is called ${quote(area)}, so its temperature is not used${didYouMean(area, [...known.values()])}`;
    findings.notice({ file: VENUE_FILE, column: "areaTemperatureC" }, message);
  }
}

/** A container on the scale needs to know what a gram of the item is in its base unit, and should know its empty weight. */
function checkWeighed(
  context: CheckContext,
  row: Row<CountRow>,
  fact: CountRow,
  packs: readonly Pack[],
): void {
  const item = context.units.item(fact.item);
  if (item === undefined) return;
  const gramsPerBase = { ml: item.densityGPerMl, g: 1, each: item.pieceG }[item.base];
  if (gramsPerBase === null) {
    const needed =
      item.base === "each"
        ? "piece_g in items.csv"
        : "density_g_per_ml or brix in items.csv, or empty_g and full_g in packs.csv";
    const message = `to weigh ${quote(fact.item)}, its density must be known; add ${needed}${figureHint(item, needed)}`;
    wrong(context, "counts", row, "gross_g", message);
  } else if (packs.every(({ emptyG, fullG }) => emptyG === null && fullG === null)) {
    const message = `nothing says what an empty container of ${quote(fact.item)} weighs, so the usual weight for its size is taken; add empty_g in packs.csv`;
    context.findings.notice({ file: SHEETS.counts.file, row: row.row, column: "gross_g" }, message);
  } else if (item.base === "ml") noticeOddWeight(context, row, fact, packs, gramsPerBase);
}

/** A weight below an empty container or above a full one is likelier a slip of the pen, or of the empty weight. */
function noticeOddWeight(
  { units, venue, findings }: CheckContext,
  row: Row<CountRow>,
  fact: CountRow,
  packs: readonly Pack[],
  densityGPerMl: number,
): void {
  const pack = packs.find(({ emptyG, fullG }) => emptyG !== null || fullG !== null);
  const volumeMl = pack === undefined ? undefined : units.sizeOf(pack);
  if (pack === undefined || volumeMl === undefined) return;
  for (const grossG of fact.grossG) {
    try {
      const scaleSdG = venue?.uncertainty.scaleG ?? 0;
      volumeByWeight({ grossG, densityGPerMl, container: { ...pack, volumeMl }, scaleSdG });
    } catch (error) {
      if (!(error instanceof OutOfRangeError)) throw error;
      findings.notice({ file: SHEETS.counts.file, row: row.row, column: "gross_g" }, error.message);
    }
  }
}

/** An area that is counted but not in areas.csv is likelier a slip of the pen than a new place. */
function noticeUnknownAreas(context: CheckContext): void {
  if (context.rows.areas.length === 0) return;
  const known = new Set(context.rows.areas.map(({ cells }) => foldName(cells.area ?? "")));
  for (const { row, cells } of context.rows.counts) {
    if (cells.area === undefined || known.has(foldName(cells.area))) continue;
    known.add(foldName(cells.area));
    const message = `${quote(cells.area)} is not in areas.csv; it was taken as an area of its own`;
    context.findings.notice({ file: SHEETS.counts.file, row, column: "area" }, message);
  }
}
