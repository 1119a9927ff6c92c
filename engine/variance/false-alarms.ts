/**
 * Which of many chances stand out when all are looked at together (Benjamini and Hochberg, 1995).
 *
 * Of those found to stand out, no more than the share `rate` is expected to be false alarms. Returns the
 * largest chance that still stands out, or −1 when none does. [0.001, 0.01, 0.5], rate 0.05 → 0.01.
 */
export function largestStandingOut(chances: readonly number[], rate: number): number {
  const sorted = [...chances].sort((a, b) => a - b);
  for (let rank = sorted.length; rank >= 1; rank--) {
    const chance = sorted[rank - 1] ?? 1;
    if (chance <= (rank / sorted.length) * rate) return chance;
  }
  return -1;
}
