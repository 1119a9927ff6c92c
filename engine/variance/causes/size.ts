/** What sizes a cause can have, and how likely each is. */
export type SizeRule =
  /** Any size up to `max`; the chance falls off beyond `typical` (half a Cauchy curve). */
  | { kind: "any"; max: number; typical: number }
  /** Whole numbers from 1, each with its own chance, in logarithms. */
  | { kind: "whole"; max: number; logChance: (size: number) => number }
  /** About one known size. */
  | { kind: "around"; center: number; relativeSd: number };

/** The size that fits best, and by how much its explanation beats none (log of the likelihood ratio, sizes weighed). */
export type Sized = { size: number; score: number };

const NONE: Sized = { size: 0, score: Number.NEGATIVE_INFINITY };

/**
 * The best size of a signature c against residuals r, both in standard uncertainties: `along` = c·r,
 * `length2` = c·c. The likelihood gain of size s is s·c·r − s²·c·c/2; a rule that allows many sizes pays for
 * them (Laplace's approximation to the weighed likelihood, of which BIC is the rougher form).
 */
export function bestSize(rule: SizeRule, along: number, length2: number): Sized {
  if (length2 <= 0) return NONE;
  switch (rule.kind) {
    case "any":
      return anySize(rule, along, length2);
    case "whole":
      return wholeSize(rule, along, length2);
    case "around":
      return aroundSize(rule, along, length2);
  }
}

function gain(size: number, along: number, length2: number): number {
  return size * along - (size * size * length2) / 2;
}

function anySize({ max, typical }: { max: number; typical: number }, along: number, length2: number): Sized {
  if (along <= 0 || max <= 0 || typical <= 0) return NONE;
  const size = Math.min(along / length2, max);
  const density = 2 / (Math.PI * typical * (1 + (size / typical) ** 2));
  const width = Math.sqrt((2 * Math.PI) / length2);
  return { size, score: gain(size, along, length2) + Math.min(0, Math.log(density * width)) };
}

/** Sizes this far from the best fit are tried too: a likelier size may fit almost as well. */
const REACH = 2;

function wholeSize(
  { max, logChance }: { max: number; logChance: (size: number) => number },
  along: number,
  length2: number,
): Sized {
  const fit = along / length2;
  let best = NONE;
  for (
    let size = Math.max(1, Math.floor(fit) - REACH);
    size <= Math.min(max, Math.ceil(fit) + REACH);
    size++
  ) {
    const score = gain(size, along, length2) + logChance(size);
    if (score > best.score) best = { size, score };
  }
  return best;
}

function aroundSize(
  { center, relativeSd }: { center: number; relativeSd: number },
  along: number,
  length2: number,
): Sized {
  const precision = 1 / (center * relativeSd) ** 2;
  const size = (along + center * precision) / (length2 + precision);
  const score =
    (size * size * (length2 + precision) - center * center * precision - Math.log1p(length2 / precision)) / 2;
  return size > 0 ? { size, score } : NONE;
}

/** One container is likelier than two, two than three; a case taken for a bottle leaves out all but one. */
export function containerChance({
  one,
  perCase,
}: {
  one: number;
  perCase: number;
}): (size: number) => number {
  const ofCase = perCase > 2 ? 0.15 : 0;
  return (size) => {
    const few = (1 - ofCase) * (size === 1 ? one : (1 - one) / size ** 2);
    const asCase = ofCase > 0 && size % (perCase - 1) === 0 ? ofCase / 2 ** (size / (perCase - 1)) : 0;
    return Math.log(few + asCase);
  };
}
