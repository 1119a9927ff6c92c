/** Whole days from one date to another. daysBetween("2026-11-23", "2026-11-25") → 2. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / 86_400_000);
}
