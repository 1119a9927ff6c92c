import { DEFAULT_HOUSE_ML } from "#engine/measure/units.ts";
import { DEFAULT_THRESHOLDS } from "#engine/variance/verdict.ts";
import type { VenueSettings } from "#engine/venue.ts";
import { formatPlain } from "../format.ts";
import { formatMoney } from "../money.ts";
import { locale } from "../texts/language.ts";
import { say } from "../texts/say.ts";
import { heldAt, type Place } from "./settings.ts";

type Key = "name" | "show" | "country" | "region" | "dayEnds" | "oz" | "serviceLevel" | MeasureKey;
type MeasureKey = keyof VenueSettings["houseMl"] | keyof NonNullable<VenueSettings["thresholds"]>;

const AREA = "areaTemperatureC.";

function keyOf(place: Place): Key {
  return place.slice(place.indexOf(".") + 1) as Key;
}

/** What a field is called, with its unit. */
export function labelOf(place: Place, currency: string): string {
  if (place.startsWith(AREA)) return say("venue.areaC", { area: place.slice(AREA.length) });
  return say(`venue.${keyOf(place)}`, { currency });
}

/** In a line, what a setting does, and what holds while its field is empty. */
export function hintOf(place: Place, { currency }: Pick<VenueSettings, "currency">): string {
  if (place.startsWith(AREA)) return "";
  return say(`venue.${keyOf(place)}Why`, {
    usual: usualOf(keyOf(place)),
    money: formatMoney(DEFAULT_THRESHOLDS.chaseMoney, currency, { whole: true }),
  });
}

function usualOf(key: Key): string {
  if (key in DEFAULT_HOUSE_ML) return formatPlain(DEFAULT_HOUSE_ML[key as keyof typeof DEFAULT_HOUSE_ML]);
  if (key === "falseAlarmRate") return formatPlain(DEFAULT_THRESHOLDS.falseAlarmRate * 100);
  return key in DEFAULT_THRESHOLDS
    ? formatPlain(DEFAULT_THRESHOLDS[key as keyof typeof DEFAULT_THRESHOLDS])
    : "";
}

/** The country that a code stands for, in the reader's language; "" for none. countryNamed("pt") → "Portugal". */
export function countryNamed(code: string): string {
  if (!/^[a-z]{2}$/i.test(code)) return "";
  return new Intl.DisplayNames(locale, { type: "region", fallback: "none" }).of(code.toUpperCase()) ?? "";
}

/** What a field holds as it is typed and read: a number with this language's decimal mark. */
export function textAt(settings: VenueSettings, place: Place): string {
  const held = heldAt(settings, place);
  return typeof held === "number" ? formatPlain(held) : held;
}

/** One setting that changes: "Dash, ml: 0.92 → 0.8". */
export function changeWords(place: Place, was: VenueSettings, now: VenueSettings): string {
  return say("venue.change", {
    what: labelOf(place, now.currency),
    before: saidAt(was, place),
    after: saidAt(now, place),
  });
}

function saidAt(settings: VenueSettings, place: Place): string {
  const text = textAt(settings, place);
  if (text === "") return say("venue.nothing");
  if (place === "oz") return say(text === "us" ? "people.ounceUs" : "people.ounceImperial");
  return text;
}
