import { type Catalogue, itemNamed } from "#engine/catalogue.ts";
import { type BlendPart, blend, waterToReach } from "#engine/measure/blend.ts";
import { dilutedAbvPct, iceDilution } from "#engine/measure/dilution.ts";
import { OutOfRangeError } from "#engine/measure/range.ts";
import { billOf, type Portion } from "#engine/specs/bill.ts";
import { serveLines, servePortions } from "#engine/specs/serve.ts";
import type { BusinessDate } from "#engine/time.ts";

/** A drink before ice and, where the published fits cover it, after; a top comes on top of either. */
export type DrinkStrength = {
  volumeMl: number;
  abvPct: number;
  iced: {
    technique: "shaken" | "stirred";
    volumeMl: number;
    abvPct: number;
    /** Water that takes the place of the ice when the drink is batched: g to a litre of it. */
    waterGPerL: number;
  } | null;
};

/**
 * Volume and strength of what is poured for one serve on a date, with the contraction that `blend` knows (OIML R 22,
 * ICUMSA SPS-4), and after shaking or stirring by `iceDilution` (Arnold 2014, 10–35 % vol); undefined where nothing
 * poured has alcohol, or before the first version.
 *
 * What has neither strength nor °Brix in the book, as juice, is taken to fill what water does; a prep without a strength
 * of its own has that of what goes into it; sugar in a liqueur of unknown density is passed over.
 * 60 ml of 40 %, 30 ml of 16 %, stirred → 89.8 ml of 32.1 %; with 42 % water 22.6 %.
 */
export function drinkStrength(
  catalogue: Catalogue,
  drink: string,
  date: BusinessDate,
): DrinkStrength | undefined {
  const poured = serveLines(catalogue, drink, date)?.filter(({ unit }) => unit !== "top");
  if (poured === undefined) return undefined;
  const facts = catalogue.drinks.get(drink);
  const asked = poured.map((line) => ({ line, factor: 1 }));
  const parts = servePortions(catalogue, facts, asked).flatMap((portion) => partOf(catalogue, portion, date));
  if (!parts.some(({ abvPct = 0 }) => abvPct > 0)) return undefined;
  try {
    const { volumeMl, abvPct } = blend(parts);
    return { volumeMl, abvPct, iced: iced({ volumeMl, abvPct }, facts?.technique ?? null) };
  } catch (error) {
    if (error instanceof OutOfRangeError) return undefined;
    throw error;
  }
}

function partOf(catalogue: Catalogue, portion: Portion, date: BusinessDate): BlendPart[] {
  const item = itemNamed(catalogue, portion.item);
  if (item.base !== "ml" || portion.amount <= 0) return [];
  const abvPct = item.abv ?? inputsAbvPct(catalogue, portion, date);
  const brix = abvPct > 0 && item.densityGPerMl === null ? 0 : (item.brix ?? 0);
  const density = item.densityGPerMl;
  // A density without °Brix is right for the weight, and blends as if what weighs were water.
  return [
    { volumeMl: portion.amount, abvPct, brix, ...(density === null ? {} : { densityGPerMl: density }) },
  ];
}

/** A prep is as strong as what goes into it; anything else without a strength has none. */
function inputsAbvPct(catalogue: Catalogue, portion: Portion, date: BusinessDate): number {
  const { items } = billOf(catalogue, [portion], { date, raw: true });
  const ethanolMl = items.reduce((sum, { item, amount }) => {
    const { abv, base } = itemNamed(catalogue, item);
    return base === "ml" ? sum + (amount * (abv ?? 0)) / 100 : sum;
  }, 0);
  return Math.min(100, (100 * ethanolMl) / portion.amount);
}

function iced(
  { volumeMl, abvPct }: { volumeMl: number; abvPct: number },
  technique: string | null,
): DrinkStrength["iced"] {
  if ((technique !== "shaken" && technique !== "stirred") || abvPct < 10 || abvPct > 35) return null;
  const dilution = iceDilution({ technique, abvPct });
  const weaker = dilutedAbvPct({ abvPct, dilution });
  const { waterG } = waterToReach({ volumeMl: 1000, abvPct, wantedAbvPct: weaker });
  return { technique, volumeMl: volumeMl * (1 + dilution), abvPct: weaker, waterGPerL: waterG };
}
