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

export type Surprise = { found: number; expected: number };

const FAR_OFF_SD = 3;
const A_DAY_MS = 86_400_000;

/**
 * Whether what was found of an item in all its areas is far from what the book expects: more than three standard
 * deviations. Less than expected is no surprise when the book has heard nothing for a day: it knows no sales since.
 */
export function surpriseOf(
  rows: readonly CountRow[],
  { item, venue, expectedAt }: { item: SheetItem; venue: Venue; expectedAt: string | null },
): Surprise | null {
  const { expectedQty, expectedSd } = item;
  const areas = new Set(rows.map(({ area }) => area));
  if (expectedQty === null || expectedSd === null || areas.size < item.areas) return null;
  const found = quantityOf(rows, item, venue);
  if (found === null) return null;
  const off = found.quantity - expectedQty;
  if (Math.abs(off) <= FAR_OFF_SD * Math.hypot(expectedSd, Math.sqrt(found.variance))) return null;
  const now = Date.parse(
    rows
      .map(({ at }) => at)
      .sort()
      .at(-1) ?? "",
  );
  const isOldNews = expectedAt === null || now - Date.parse(expectedAt) > A_DAY_MS;
  if (off < 0 && isOldNews) return null;
  return { found: found.quantity, expected: Math.max(0, expectedQty) };
}
