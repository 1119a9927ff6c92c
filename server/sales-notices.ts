import { type DayChange, isMoved } from "#db/stored/day-changes.ts";
import type { DayTally } from "#engine/sales/packed/tally.ts";

const DATES_SHOWN = 5;

/** What an import did to its days in a way that only the bar can say is right. */
export function dayNotices(changes: readonly DayChange[]): string[] {
  return [...doubled(changes), ...sumsReplaced(changes), ...corrected(changes)];
}

/** Sums of a day beside its single sales are probably the same sales twice; nobody but the bar can tell. */
function doubled(changes: readonly DayChange[]): string[] {
  const mixed = changes.filter(
    (change) =>
      isMoved(change) && change.before.count > 0 && isMixed(change.after) && !isMixed(change.before),
  );
  return mixed.length === 0
    ? []
    : [
        `${datesOf(mixed)}: these days now have both sales with a time and sums without one, from different files. Probably the same sales are counted twice; take one of the two imports back with --undo.`,
      ];
}

function sumsReplaced(changes: readonly DayChange[]): string[] {
  const days = changes.filter((change) => change.sumsReplaced > 0);
  return days.length === 0
    ? []
    : [
        `${datesOf(days)}: sums of these days were there already and are replaced by the sums of this file. If both count, as of two tills, take this import back and read the file in with --add.`,
      ];
}

function corrected(changes: readonly DayChange[]): string[] {
  const days = changes.filter((change) => change.changed > change.sumsReplaced - change.dropped);
  const lines = days.reduce(
    (sum, { changed, sumsReplaced, dropped }) => sum + changed - sumsReplaced + dropped,
    0,
  );
  return lines === 0
    ? []
    : [
        `${datesOf(days)}: ${lines} ${lines === 1 ? "line has" : "lines have"} the check and line number of a line read in before and another quantity, money or name; the later file holds.`,
      ];
}

function datesOf(changes: readonly DayChange[]): string {
  const shown = changes.slice(0, DATES_SHOWN).map(({ businessDate }) => businessDate);
  const more = changes.length - shown.length;
  return `${shown.join(", ")}${more > 0 ? ` and ${more} more` : ""}`;
}

/** Whether a day has both lines with a time and lines without. */
function isMixed({ isTimed }: DayTally): boolean {
  return isTimed.includes(0) && isTimed.includes(1);
}
