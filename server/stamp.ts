/** Who enters something, and the clock that dates it. */
export type Stamp = { now: () => string };
