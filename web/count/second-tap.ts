/** Quicker than anybody reads the next item's name, slower than the second tap of a double one. */
const DOUBLE_TAP_MS = 350;

let actedMs = Number.NEGATIVE_INFINITY;

/** Notes that an item was just entered or left with one of the word keys. */
export function noteAct(): void {
  actedMs = performance.now();
}

/** Whether a press is the second of a double tap, which falls on the next item and is not meant for it. Keys of a keyboard never are. */
export function isSecondTap({ detail }: { detail: number }): boolean {
  return detail > 0 && performance.now() - actedMs < DOUBLE_TAP_MS;
}
