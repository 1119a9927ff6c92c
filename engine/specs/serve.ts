import { baseAmount, type Catalogue, itemNamed } from "#engine/catalogue.ts";
import { topUpMl } from "#engine/measure/top-up.ts";
import type { Unit } from "#engine/measure/units.ts";
import type { Modifier } from "#engine/sales/ring.ts";
import type { Portion } from "#engine/specs/bill.ts";
import type { Drink, SpecLine } from "#engine/specs/spec.ts";
import type { BusinessDate } from "#engine/time.ts";
import { inForce } from "#engine/versions.ts";

/** One line of what goes into a serve, as the till changed it. */
export type ServeLine = { item: string; amount: number | null; unit: Unit | "top" };

/** Common practice where the glass is not known: a top of 3 oz, give or take half. */
export const TOP_WITHOUT_GLASS = { volumeMl: 90, sd: 45 };

/** The lines of a drink on a date; undefined before its first version. */
export function serveLines(catalogue: Catalogue, drink: string, date: BusinessDate): ServeLine[] | undefined {
  return inForce(catalogue.specs.get(drink) ?? [], date)?.lines.map(asServeLine);
}

function asServeLine({ item, amount, unit }: SpecLine): ServeLine {
  return { item, amount, unit };
}

/**
 * The lines after the till's modifiers, and the factor of each.
 *
 * Swaps, additions and removals apply in their order; `times` comes last, over added lines too.
 */
export function modifyLines(
  lines: readonly ServeLine[],
  modifiers: readonly Modifier[],
): { line: ServeLine; factor: number }[] {
  const changed = modifiers.reduce(applyToLines, [...lines]);
  const times = modifiers.filter(({ effect }) => effect === "times");
  return changed.map((line) => ({
    line,
    factor: times.reduce(
      (product, { item, factor }) =>
        item === null || item === line.item ? product * (factor ?? 1) : product,
      1,
    ),
  }));
}

function applyToLines(
  lines: ServeLine[],
  { effect, item, with: swapIn, amount, unit }: Modifier,
): ServeLine[] {
  switch (effect) {
    case "swap":
      if (swapIn === null) return lines;
      return lines.map((line) =>
        line.item !== item
          ? line
          : {
              item: swapIn,
              amount: amount ?? line.amount,
              unit: amount === null ? line.unit : (unit ?? line.unit),
            },
      );
    case "add":
      return item === null || amount === null || unit === null ? lines : [...lines, { item, amount, unit }];
    case "remove":
      return lines.filter((line) => line.item !== item);
    case "times":
    case "none":
      return lines;
  }
}

/**
 * What one serve takes of each item named in its lines, in base units, with the spread of its pours.
 *
 * A pour's standard deviation is a share of the amount, by how the item is poured (`uncertainty` of the
 * venue); what is counted in pieces or weighed has none. A `top` line is the estimate of the room left in the glass.
 */
export function servePortions(
  catalogue: Catalogue,
  drink: Drink | undefined,
  lines: readonly { line: ServeLine; factor: number }[],
): Portion[] {
  const poured = lines.map(({ line, factor }) => ({ portion: pouredPortion(catalogue, line), line, factor }));
  const liquidMl = poured.reduce(
    (sum, { portion }) =>
      sum + (portion && itemNamed(catalogue, portion.item).base === "ml" ? portion.amount : 0),
    0,
  );
  const tops = poured.filter(({ portion }) => portion === undefined).length;
  return poured.map(({ portion, line, factor }) => {
    const { amount, variance, biasSd, item } =
      portion ?? topPortion(catalogue, drink, line.item, { liquidMl, tops });
    return { item, amount: amount * factor, variance: variance * factor, biasSd: biasSd * factor };
  });
}

function pouredPortion(catalogue: Catalogue, { item, amount, unit }: ServeLine): Portion | undefined {
  if (amount === null || unit === "top") return undefined;
  const inBase = baseAmount(catalogue, { item, amount, unit });
  const sd = inBase * pourSpread(catalogue, item);
  return { item, amount: inBase, variance: sd * sd, biasSd: 0 };
}

function pourSpread(catalogue: Catalogue, name: string): number {
  const item = itemNamed(catalogue, name);
  if (item.base !== "ml") return 0;
  const { pourJigger, pourFree } = catalogue.venue.uncertainty;
  return { jigger: pourJigger, free: pourFree, measured: 0 }[item.pour];
}

/** The room left in the glass, shared by the lines that top it up. */
function topPortion(
  catalogue: Catalogue,
  drink: Drink | undefined,
  item: string,
  { liquidMl, tops }: { liquidMl: number; tops: number },
): Portion {
  const { glassMl = null, ice = null, technique = null } = drink ?? {};
  const { pourFree } = catalogue.venue.uncertainty;
  const { volumeMl, sd } = topUpMl({ glassMl, ice, technique, liquidMl }) ?? TOP_WITHOUT_GLASS;
  return {
    item,
    amount: baseAmount(catalogue, { item, amount: volumeMl / tops, unit: "ml" }),
    // Each is poured by eye, as a free pour is; all of them share what the estimate is off by.
    variance: baseAmount(catalogue, { item, amount: (volumeMl / tops) * pourFree, unit: "ml" }) ** 2,
    biasSd: baseAmount(catalogue, { item, amount: sd / tops, unit: "ml" }),
  };
}
