/** A value outside of what a published formula, or a physical container, covers. The message says what to do. */
export class OutOfRangeError extends RangeError {
  constructor(message: string) {
    super(message);
    this.name = "OutOfRangeError";
  }
}

/** Throws OutOfRangeError unless low ≤ value ≤ high; `what` names the value with its unit. */
export function requireWithin(value: number, range: { what: string; low: number; high: number }): void {
  if (value >= range.low && value <= range.high) return;
  throw new OutOfRangeError(`${range.what} must lie from ${range.low} to ${range.high}; it is ${value}.`);
}
