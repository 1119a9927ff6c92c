import type { HolidayAhead } from "#engine/demand/forecast.ts";

/** A change smaller than this is no change to speak of. */
const AS_USUAL_WITHIN = 0.01;

/**
 * What a holiday is expected to do, and from what that is known. "Eve of Republic Day: 18 % busier than usual, by 1
 * such day and 4 other eves"
 */
export function holidayWords(day: HolidayAhead): string {
  const called = day.kind === "eve" ? `Eve of ${day.name}` : day.name;
  if (day.hasEvent) return `${called}: as its event in the book says`;
  if (day.isClosed) return `${called}: taken as shut, as before; enter an event if you open`;
  if (day.seenOfKind === 0) return `${called}: as usual, for your sales hold no such day yet`;
  return `${called}: ${change(day.factor)}, by ${evidence(day)}`;
}

/** By how many whole percent a day is busier (above 0) or quieter than usual; 0 is as usual. */
export function changeOf(factor: number): number {
  return Math.abs(factor - 1) < AS_USUAL_WITHIN ? 0 : Math.round((factor - 1) * 100);
}

function change(factor: number): string {
  const percent = changeOf(factor);
  if (percent === 0) return "as usual";
  return `${Math.abs(percent)} % ${percent > 0 ? "busier" : "quieter"} than usual`;
}

function evidence({ kind, seen, seenOfKind }: HolidayAhead): string {
  const others = seenOfKind - seen;
  const word = kind === "eve" ? "eve" : kind;
  const otherWords = `${others} other ${others === 1 ? word : `${word}s`}`;
  if (seen === 0) return otherWords;
  const own = `${seen} such ${seen === 1 ? "day" : "days"}`;
  return others === 0 ? own : `${own} and ${otherWords}`;
}
