import { usualEmptyG, volumeByLevel } from "#engine/measure/container.ts";
import { unitFactor } from "#engine/measure/unit-factor.ts";
import type { CountRow } from "#engine/stock/movement.ts";
import type { Venue } from "#engine/venue.ts";
import type { SheetItem } from "./sheet.ts";

type Found = Pick<CountRow, "pack" | "full" | "parts" | "grossG" | "amount" | "unit"> & { area?: string };

/** In base units, with the variance of finding it; null where a weight cannot be turned into an amount here. */
export type Quantity = { quantity: number; variance: number };

/**
 * What rows of one item found, in base units, by the server's own rules: full × size + open × size + net weight ÷
 * density + amount, levels in a cold area as they are at 20 °C. 1 full and an open one at 0.5 of 700 ml → 1050.
 */
export function quantityOf(rows: readonly Found[], item: SheetItem, venue: Venue): Quantity | null {
  const total: Quantity = { quantity: 0, variance: 0 };
  const { reading, scaleG, ml, each } = venue.uncertainty;
  for (const { area, pack: name, full, parts, grossG, amount, unit } of rows) {
    const pack = item.packs.find(({ pack }) => pack === name) ?? item.packs[0];
    const size = pack?.size ?? 1;
    total.quantity += (full ?? 0) * size;
    const atCold = (area === undefined ? undefined : item.atCold?.[area]) ?? 1;
    for (const share of parts) {
      const open = volumeByLevel({ share, volumeMl: size, readingSd: reading, atCold });
      total.quantity += open.volumeMl;
      total.variance += open.sd ** 2;
    }
    const gramsPerBase = { ml: item.densityGPerMl, g: 1, each: item.pieceG }[item.base];
    if (grossG.length > 0 && gramsPerBase === null) return null;
    for (const gross of grossG) {
      const perBase = gramsPerBase ?? 1;
      const fromFull = pack?.fullG == null ? null : pack.fullG - size * perBase;
      const emptyG = pack?.emptyG ?? fromFull ?? emptyOf(size);
      if (emptyG === null) return null;
      total.quantity += Math.max(0, (gross - emptyG) / perBase);
      total.variance += (scaleG / perBase) ** 2;
    }
    if (amount !== null && unit !== null) {
      total.quantity += amount * unitFactor(unit, venue).factor;
      total.variance += amount === 0 ? 0 : { ml, each, g: scaleG }[item.base] ** 2;
    }
  }
  return total;
}

/** Nobody knows what an empty keg or tub weighs: the server then asks for it, and nothing is reckoned here. */
function emptyOf(size: number): number | null {
  try {
    return usualEmptyG(size);
  } catch {
    return null;
  }
}

/** What was found, beside what the book expects: of all there is, or of what must stand in this place. */
export type Surprise = {
  /** Counted everywhere; more than there can be, with places still to come; or less here than the others can make up for. */
  kind: "all" | "already" | "here";
  found: number;
  expected: number;
};

const FAR_OFF_SD = 3;
const A_DAY_MS = 86_400_000;

type Asked = { item: SheetItem; area: string; venue: Venue; expectedAt: string | null };

/**
 * Whether what was found of an item is far from what the book expects, more than three standard deviations, as soon as
 * that can be said fairly. Counted in all its areas, the sum decides. Before that, too much is too much wherever the rest
 * stands; and too little here is so only when the areas to come would have to hold a container more than they ever held.
 *
 * Less than expected is no surprise when the book has heard nothing for a day: it knows no sales since.
 * 20 expected, of which the other area never held more than 4 bottles: none here is asked about, 14 are not.
 */
export function surpriseOf(
  rows: readonly CountRow[],
  { item, area, venue, expectedAt }: Asked,
): Surprise | null {
  const { expectedQty, expectedSd } = item;
  if (expectedQty === null || expectedSd === null) return null;
  const found = quantityOf(rows, item, venue);
  if (found === null) return null;
  const farOff = FAR_OFF_SD * Math.hypot(expectedSd, Math.sqrt(found.variance));
  const expected = Math.max(0, expectedQty);
  const areas = new Set(rows.map((row) => row.area));
  const isAll = areas.size >= item.areas;
  if (found.quantity - expectedQty > farOff) {
    return { kind: isAll ? "all" : "already", found: found.quantity, expected };
  }
  if (isOldNews(rows, expectedAt)) return null;
  if (isAll) {
    return expectedQty - found.quantity > farOff ? { kind: "all", found: found.quantity, expected } : null;
  }
  const elsewhere = mostToCome(item, areas);
  if (elsewhere === null || expectedQty - elsewhere - found.quantity <= farOff) return null;
  const here = rows.filter((row) => row.area === area);
  const foundHere = quantityOf(here, item, venue)?.quantity ?? 0;
  // What other areas already gave is no longer expected here.
  return { kind: "here", found: foundHere, expected: expectedQty - elsewhere - found.quantity + foundHere };
}

/** The most that the areas still to come can fairly be thought to hold: a container more than ever; null where one was counted too seldom. */
function mostToCome({ mostSeen, packs }: SheetItem, counted: ReadonlySet<string>): number | null {
  if (mostSeen === undefined) return null;
  const spare = Math.max(0, ...packs.map(({ size }) => size));
  let sum = 0;
  for (const [area, most] of Object.entries(mostSeen)) {
    if (counted.has(area)) continue;
    if (most === null) return null;
    sum += most + spare;
  }
  return sum;
}

function isOldNews(rows: readonly CountRow[], expectedAt: string | null): boolean {
  const now = Math.max(...rows.map(({ at }) => Date.parse(at)));
  return expectedAt === null || now - Date.parse(expectedAt) > A_DAY_MS;
}
