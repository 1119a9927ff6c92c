import type { HolidayAhead } from "#engine/demand/forecast.ts";
import { changeOf } from "#engine/demand/holiday-words.ts";
import { formatNumber } from "../format.ts";
import { say } from "../texts/say.ts";

/** What a holiday is expected to do, and from what that is known, as `holidayWords` says it for the command line. */
export function holidayText(day: HolidayAhead): string {
  const called = day.kind === "eve" ? say("forecast.eveOf", { name: day.name }) : day.name;
  if (day.hasEvent) return say("forecast.holidayEvent", { called });
  if (day.isClosed) return say("forecast.holidayShut", { called });
  if (day.seenOfKind === 0) return say("forecast.holidayUnseen", { called });
  const change = changeOf(day.factor);
  const by = evidence(day);
  if (change === 0) return say("forecast.holidayAsUsual", { called, by });
  const percent = formatNumber(Math.abs(change));
  return change > 0
    ? say("forecast.holidayBusier", { called, percent, by })
    : say("forecast.holidayQuieter", { called, percent, by });
}

function evidence({ kind, seen, seenOfKind }: HolidayAhead): string {
  const others = say("forecast.otherDays", {
    kind: kind === "weekend holiday" ? "weekend" : kind,
    count: seenOfKind - seen,
  });
  if (seen === 0) return others;
  const own = say("forecast.suchDays", { count: seen });
  return seenOfKind === seen ? own : say("forecast.ownAndOthers", { own, others });
}
