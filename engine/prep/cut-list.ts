import { baseAmount, type Catalogue, itemNamed } from "#engine/catalogue.ts";
import { type Demand, demandQuantile } from "#engine/demand/distribution.ts";
import type { Unit } from "#engine/measure/units.ts";
import { expectedYield, type YieldBelief } from "#engine/measure/yield.ts";
import { type PiecesRange, piecesRange } from "#engine/prep/fruit-yield.ts";
import { madeInUnit } from "#engine/prep/making.ts";
import type { CutAsk } from "#engine/specs/bill.ts";
import { recipeInForce } from "#engine/specs/recipe.ts";
import type { BusinessDate } from "#engine/time.ts";
import { DEFAULT_SERVICE_LEVEL } from "#engine/venue.ts";

/** One fruit to be cut: how many pieces, what they give, and what is left over on its parts. */
export type CutLine = {
  source: string;
  /** The largest, over the parts, of the shares asked; a cook takes the next whole piece. */
  pieces: number;
  gives: { item: string; amount: number; unit: Unit }[];
  /** Parts of so many pieces that nothing asked for: free to use. */
  spare: { part: string; share: number }[];
  /** Pieces by what the kitchen's own batches gave, where they taught it, and how many a juicier or drier box may take. */
  likely: PiecesRange;
};

/** Something cut from a fruit: an amount in base units, and the shares of a piece's parts that it takes. */
export type CutWanted = Pick<CutAsk, "source" | "gives" | "amount" | "parts" | "shares">;

/**
 * Fruit for the day by the shared-parts rule: all that is asked of one fruit together, since peeled fruit is pressed.
 *
 * 500 ml juice at 25 ml and 40 wheels at 8 a piece: flesh 20 + 5, skin 5 → 25 pieces, skin of 20 to spare.
 */
export function cutList(
  catalogue: Catalogue,
  wanted: readonly CutWanted[],
  date: BusinessDate,
  { learnt = new Map(), certainty }: { learnt?: LearntYields; certainty?: number | undefined } = {},
): CutLine[] {
  const sources = [...new Set(wanted.filter(({ amount }) => amount > 0).map(({ source }) => source))];
  return sources.map((source) => {
    const own = wanted.filter((cut) => cut.source === source && cut.amount > 0);
    const shares = sharesByPart(own);
    const pieces = Math.max(...shares.values());
    const parts = [...partsOf(catalogue, source, date), ...shares.keys()];
    const spare = [...new Set(parts)].map((part) => ({ part, share: pieces - (shares.get(part) ?? 0) }));
    return {
      source,
      pieces,
      gives: givesOf(catalogue, own, date),
      spare: spare.filter(({ share }) => share > pieces * 1e-9),
      likely: likelyPieces(own, { learnt, yieldSd: catalogue.venue.uncertainty.yield, certainty }),
    };
  });
}

/** What a piece gives of what is pressed from it, by what is pressed. */
export type LearntYields = ReadonlyMap<string, YieldBelief>;

/** The part most asked for decides; the spreads of what takes it add up in quadrature (JCGM 100, 5.1.2). */
function likelyPieces(
  cuts: readonly CutWanted[],
  { learnt, yieldSd, certainty }: { learnt: LearntYields; yieldSd: number; certainty: number | undefined },
): PiecesRange {
  const parts = [...new Set(cuts.flatMap((cut) => cut.parts))].map((part) => {
    const asked = cuts
      .filter((cut) => cut.parts.includes(part))
      .map((cut) => likelyShares(cut, learnt.get(cut.gives), yieldSd));
    const pieces = asked.reduce((sum, { shares }) => sum + shares, 0);
    const variance = asked.reduce((sum, { shares, sdShare }) => sum + (shares * sdShare) ** 2, 0);
    return { pieces, sdShare: pieces > 0 ? Math.sqrt(variance) / pieces : 0 };
  });
  const most = parts.reduce((a, b) => (b.pieces > a.pieces ? b : a));
  return piecesRange(most.pieces, most.sdShare, certainty);
}

function likelyShares({ amount, shares }: CutWanted, belief: YieldBelief | undefined, yieldSd: number) {
  if (belief === undefined) return { shares, sdShare: yieldSd };
  const likely = amount / belief.meanMl;
  return { shares: likely, sdShare: expectedYield(belief, likely).sd / amount };
}

/** Shares asked of each part of one fruit. */
export function sharesByPart(cuts: readonly Pick<CutWanted, "parts" | "shares">[]): Map<string, number> {
  const shares = new Map<string, number>();
  for (const cut of cuts) {
    for (const part of new Set(cut.parts)) shares.set(part, (shares.get(part) ?? 0) + cut.shares);
  }
  return shares;
}

/** What the drinks of a day want cut when it is asked for, at each thing's service level. */
export function cutsForDrinks(
  catalogue: Catalogue,
  demand: ReadonlyMap<string, Demand>,
  date: BusinessDate,
): CutWanted[] {
  return [...demand].flatMap(([gives, need]) => {
    const cut = recipeInForce(catalogue, gives, date)?.cut;
    if (cut === undefined) return [];
    const item = itemNamed(catalogue, gives);
    const level = item.serviceLevel ?? catalogue.venue.serviceLevel ?? DEFAULT_SERVICE_LEVEL;
    const amount = demandQuantile(need, level, { isCount: item.base === "each" });
    return [{ source: cut.source, gives, amount, parts: cut.parts, shares: amount / cut.perPiece }];
  });
}

/** Every part of a fruit that some cut in the sheet speaks of: those nobody asked for are spare, too. */
function partsOf(catalogue: Catalogue, source: string, date: BusinessDate): string[] {
  return [...catalogue.cuts.keys()].flatMap((gives) => {
    const cut = recipeInForce(catalogue, gives, date)?.cut;
    return cut?.source === source ? cut.parts : [];
  });
}

function givesOf(catalogue: Catalogue, cuts: readonly CutWanted[], date: BusinessDate): CutLine["gives"] {
  const items = [...new Set(cuts.map(({ gives }) => gives))];
  return items.map((item) => {
    const amount = cuts.reduce((sum, cut) => sum + (cut.gives === item ? cut.amount : 0), 0);
    const unit = madeInUnit(catalogue, item, date);
    return { item, amount: amount / baseAmount(catalogue, { item, amount: 1, unit }), unit };
  });
}
