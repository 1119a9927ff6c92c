import type { Label } from "#engine/prep/label.ts";
import { locale } from "../texts/language.ts";
import { say } from "../texts/say.ts";

/** What stands on a label above its allergens, its name first, in the language of this device. */
export function labelWords({ name, madeOn, useBy, batch, abvPct }: Label): [name: string, ...string[]] {
  return [
    name,
    say("prep.labelMade", { day: dayWords(madeOn) }),
    useBy === null ? say("prep.labelUseByBlank") : say("prep.useBy", { date: dayWords(useBy) }),
    abvPct === null ? say("prep.labelBatch", { batch }) : say("prep.labelStrength", { batch, abv: abvPct }),
    say("prep.labelInitials"),
  ];
}

/** A date with its year, for it may be read years later at the back of a freezer: "Tue 2026-03-03". */
function dayWords(date: string): string {
  const weekday = new Intl.DateTimeFormat(locale, { weekday: "short", timeZone: "UTC" });
  const [year = "", month = "", day = ""] = date.split("-");
  return say("prep.labelDay", { weekday: weekday.format(new Date(`${date}T00:00:00Z`)), year, month, day });
}
