import type { DrinkDay } from "#engine/demand/drink-day.ts";
import { largestPart } from "#engine/demand/largest-part.ts";
import type { ServeFruit } from "#engine/demand/serve-use.ts";

/** What the drinks of one day ask of the parts of each fruit. */
export class FruitDay {
  readonly #sources = new Map<
    string,
    { parts: string[]; mean: number[]; usual: number[]; covariance: number[][] }
  >();

  add(drink: DrinkDay, cut: ServeFruit): void {
    const held = this.#sources.get(cut.source) ?? { parts: [], mean: [], usual: [], covariance: [] };
    this.#sources.set(cut.source, held);
    const places = cut.parts.map((part) => placeOf(held, part));
    places.forEach((p, i) => {
      const mean = cut.mean[i] ?? 0;
      held.mean[p] = (held.mean[p] ?? 0) + drink.mean * mean;
      held.usual[p] = (held.usual[p] ?? 0) + drink.usual * mean;
      places.forEach((q, j) => {
        const row = held.covariance[p] ?? [];
        const together = drink.chanceVariance * (cut.product[i]?.[j] ?? 0);
        row[q] = (row[q] ?? 0) + together + drink.ownVariance * mean * (cut.mean[j] ?? 0);
        held.covariance[p] = row;
      });
    });
  }

  /** A busy night raises all parts alike, and with them the largest. */
  pieces(): { source: string; mean: number; common: number; variance: number }[] {
    return [...this.#sources].map(([source, { mean, usual, covariance }]) => {
      const largest = largestPart({ mean, covariance });
      const most = Math.max(...mean);
      const risen = most > 0 ? Math.max(...usual) / most : 0;
      return {
        source,
        mean: largest.mean,
        common: largest.mean * Math.min(1, risen),
        variance: largest.variance,
      };
    });
  }
}

function placeOf(
  held: { parts: string[]; mean: number[]; usual: number[]; covariance: number[][] },
  part: string,
) {
  const known = held.parts.indexOf(part);
  if (known >= 0) return known;
  held.parts.push(part);
  held.mean.push(0);
  held.usual.push(0);
  held.covariance.push([]);
  return held.parts.length - 1;
}
