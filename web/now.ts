/** This moment, to the second: "2026-11-25T14:03:09Z". */
export function nowInstant(): string {
  return `${new Date().toISOString().slice(0, 19)}Z`;
}
