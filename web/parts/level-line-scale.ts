type Parts = {
  onHand: number;
  sd: number | null;
  par: number | null;
  expectedUse: number | null;
  onOrder: number;
  width: number;
};

const EDGE = 4;

/**
 * Places base units along a level line, so that everything that is drawn fits with some room at the right.
 *
 * On hand 700, par 1400, width 200 → 700 stands at 97.2.
 */
export function levelLineScale({
  onHand,
  sd,
  par,
  expectedUse,
  onOrder,
  width,
}: Parts): (base: number) => number {
  const most = Math.max(onHand + (sd ?? 0), onHand + onOrder, par ?? 0, expectedUse ?? 0);
  const room = width - 2 * EDGE;
  return (base) => EDGE + (most <= 0 ? 0 : (base / (most * 1.03)) * room);
}
