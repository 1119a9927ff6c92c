import { type Catalogue, cutOf, type Day, inBase } from "./catalogue.ts";

/** One business day at the cutting board: what was asked of each fruit. */
export type Board = {
  /** Asks for so much of what a cut gives. */
  ask(gives: string, amount: number, how?: Asking): void;
  /** Pieces of a source that the day's asks come to so far. */
  pieces(source: string): number;
  /** Pieces it would come to with so much more of one cut. */
  piecesWith(source: string, gives: string, amount: number): number;
  /** Sum of squared pieces by group, of the part that decides: times a relative variance, the day's variance. */
  squaredPieces(source: string): number;
  sources(): string[];
};

export type Asking = {
  /** Above 1 takes more of the fruit than the book says. */
  ease?: number;
  /** Asks that share one hand and one box of fruit, so that they err together; default: the cut. */
  group?: string;
};

type Shares = { pieces: number; parts: readonly string[] };

/**
 * Adds up shares of the parts of a piece: a peel takes skin, juice flesh, a wheel both, so that a peeled
 * orange is still pressed. Pieces are the largest sum over the parts.
 */
export function newBoard(catalogue: Catalogue, day: Day): Board {
  const groupsOf = new Map<string, Map<string, Shares>>();

  const cut = (gives: string) => {
    const found = cutOf(catalogue, gives, day);
    if (found === undefined) throw new Error(`nothing is cut into ${gives}`);
    return { ...found, piecesEach: 1 / inBase(found.perPiece, found.unit) };
  };
  const sharesOf = (source: string) => [...(groupsOf.get(source)?.values() ?? [])];

  return {
    ask(gives, amount, { ease = 1, group = gives } = {}) {
      const { source, parts, piecesEach } = cut(gives);
      const groups = groupsOf.get(source) ?? new Map<string, Shares>();
      const pieces = (groups.get(group)?.pieces ?? 0) + amount * piecesEach * ease;
      groups.set(group, { pieces, parts });
      groupsOf.set(source, groups);
    },
    pieces: (source) => decidingPart(sharesOf(source)).pieces,
    piecesWith(source, gives, amount) {
      const { parts, piecesEach } = cut(gives);
      return decidingPart([...sharesOf(source), { pieces: amount * piecesEach, parts }]).pieces;
    },
    squaredPieces(source) {
      const shares = sharesOf(source);
      const { part } = decidingPart(shares);
      return shares
        .filter(({ parts }) => parts.includes(part))
        .reduce((sum, { pieces }) => sum + pieces ** 2, 0);
    },
    sources: () => [...groupsOf.keys()],
  };
}

function decidingPart(shares: readonly Shares[]): { part: string; pieces: number } {
  const names = [...new Set(shares.flatMap(({ parts }) => parts))];
  const sums = names.map((part) => ({
    part,
    pieces: shares.filter(({ parts }) => parts.includes(part)).reduce((sum, { pieces }) => sum + pieces, 0),
  }));
  return sums.reduce((most, sum) => (sum.pieces > most.pieces ? sum : most), { part: "", pieces: 0 });
}
