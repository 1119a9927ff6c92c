import { baseAmount, type Catalogue, type CatalogueItem, itemNamed } from "#engine/catalogue.ts";
import { temperatureOfC } from "#engine/measure/area-temperature.ts";
import { USUAL_EMPTY_SPREAD, usualEmptyG, volumeByLevel } from "#engine/measure/container.ts";
import { levelAt20 } from "#engine/measure/level-temperature.ts";
import type { Pack } from "#engine/stock/item.ts";
import type { CountRow } from "#engine/stock/movement.ts";
import { containerSize, packNamed, packsInForce } from "#engine/stock/pack.ts";
import type { BusinessDate } from "#engine/time.ts";

/** What was found, in base units, and the variance of finding it. */
export type Found = { quantity: number; variance: number };

/**
 * What one count row found: `full` × the pack's size + open containers + a plain amount, as it measures at 20 °C.
 *
 * A level in a cold area is that of a shrunken volume (see `levelAt20`); a weight is the same at any temperature.
 * A sealed container is sure; an open one is off by the eye's reading (a share of its size) or by the
 * scale and its empty weight; an amount by the venue's figure for its unit. Standard deviations from
 * `uncertainty` of the venue.
 */
export function foundIn(catalogue: Catalogue, row: CountRow, date: BusinessDate): Found {
  const item = itemNamed(catalogue, row.item);
  const found: Found = { quantity: 0, variance: 0 };
  if (row.full !== null || row.parts.length > 0 || row.grossG.length > 0) {
    addContainers(catalogue, item, row, date, found);
  }
  if (row.amount !== null && row.unit !== null) {
    found.quantity += baseAmount(catalogue, { item: item.name, amount: row.amount, unit: row.unit });
    found.variance += row.amount === 0 ? 0 : amountSd(catalogue, item) ** 2;
  }
  return found;
}

/** The pack a count row speaks of: the one it names, else the item's only one. */
export function countedPack(catalogue: Catalogue, row: CountRow, date: BusinessDate): Pack | undefined {
  if (row.pack !== null) return packNamed(catalogue, { item: row.item, pack: row.pack, date });
  return packsInForce(catalogue, row.item, date)[0];
}

function addContainers(
  catalogue: Catalogue,
  item: CatalogueItem,
  row: CountRow,
  date: BusinessDate,
  found: Found,
): void {
  const { uncertainty } = catalogue.venue;
  const pack = countedPack(catalogue, row, date);
  const size = pack === undefined ? 1 : containerSize(catalogue, pack);
  found.quantity += (row.full ?? 0) * size;
  const atCold = row.parts.length === 0 ? 1 : levelAt20(item, temperatureOfC(catalogue.venue, row.area));
  for (const share of row.parts) {
    const open = volumeByLevel({ share, volumeMl: size, readingSd: uncertainty.reading, atCold });
    found.quantity += open.volumeMl;
    found.variance += open.sd ** 2;
  }
  for (const grossG of row.grossG) {
    const open = weighedContent(item, pack, size, { grossG, scaleG: uncertainty.scaleG });
    found.quantity += open.quantity;
    found.variance += open.sd ** 2;
  }
}

/**
 * The content of an open container on the scale, never less than none, and its standard deviation.
 *
 * A known empty weight is off by the same at opening and closing, so it adds nothing here; where neither
 * the empty nor the full weight is known, the usual one for the size is taken, ± 20 %.
 */
function weighedContent(
  item: CatalogueItem,
  pack: Pack | undefined,
  size: number,
  { grossG, scaleG }: { grossG: number; scaleG: number },
): { quantity: number; sd: number } {
  const gramsPerBase = { ml: item.densityGPerMl, g: 1, each: item.pieceG }[item.base];
  if (gramsPerBase === null) {
    throw new Error(`"${item.name}" was weighed, but nothing in the book gives its density.`);
  }
  const known = pack?.emptyG ?? (pack?.fullG == null ? null : pack.fullG - size * gramsPerBase);
  const emptyG = known ?? usualEmptyG(size);
  const tareSd = known === null ? emptyG * USUAL_EMPTY_SPREAD : 0;
  return {
    quantity: Math.max(0, (grossG - emptyG) / gramsPerBase),
    sd: Math.hypot(scaleG, tareSd) / gramsPerBase,
  };
}

function amountSd(catalogue: Catalogue, item: CatalogueItem): number {
  const { ml, each, scaleG } = catalogue.venue.uncertainty;
  return { ml, each, g: scaleG }[item.base];
}
