import { readAmount } from "#engine/measure/amount.ts";
import { DEFAULT_HOUSE_ML } from "#engine/measure/units.ts";
import { DEFAULT_THRESHOLDS } from "#engine/variance/verdict.ts";
import type { Venue, VenueSettings } from "#engine/venue.ts";

export const HOUSE_MEASURES = ["dash", "barspoon", "drop", "splash"] as const;
export const THRESHOLDS = ["watchRatio", "chaseRatio", "chaseMoney", "falseAlarmRate"] as const;
const TEXTS = ["name", "show", "country", "region", "dayEnds", "oz"] as const;

/** A field by its place in the settings, as the server names it: "name", "houseMl.dash", "areaTemperatureC.Freezer". */
export type Place =
  | (typeof TEXTS)[number]
  | "serviceLevel"
  | `houseMl.${(typeof HOUSE_MEASURES)[number]}`
  | `thresholds.${(typeof THRESHOLDS)[number]}`
  | `areaTemperatureC.${string}`;

const PLACE = new RegExp(
  `^(?:${TEXTS.join("|")}|serviceLevel|(?:houseMl|thresholds|areaTemperatureC)\\..+)$`,
);

/** Whether a name that the server gives is that of a field here. */
export function isPlace(name: string): name is Place {
  return PLACE.test(name);
}

/** What stands in the fields that were touched; all others stand as the settings have them. */
export type Typed = Readonly<Partial<Record<Place, string>>>;

/** Shares are typed in percent. */
const IN_PERCENT: readonly Place[] = ["serviceLevel", "thresholds.falseAlarmRate"];

/** The settings of a venue without what this screen leaves alone. */
export function settingsOf({ keepStaff: _, ...settings }: Venue): VenueSettings {
  return settings;
}

/** What a field holds of the settings: "" for what is not stated, a share in percent. */
export function heldAt(settings: VenueSettings, place: Place): string | number {
  const [part, key = ""] = parted(place);
  const whole: unknown = settings[part];
  const value = key === "" ? whole : (whole as Record<string, unknown> | undefined)?.[key];
  if (typeof value !== "number") return typeof value === "string" ? value : "";
  // Without the dust that a share times a hundred leaves.
  return IN_PERCENT.includes(place) ? Number((value * 100).toPrecision(12)) : value;
}

/** The fields that say something else than the settings do. */
export function changedPlaces(settings: VenueSettings, typed: Typed): Place[] {
  return (Object.keys(typed) as Place[]).filter((place) => {
    const was = heldAt(settings, place);
    const text = (typed[place] ?? "").trim();
    return typeof was === "number" ? readAmount(text, { decimalComma: true }) !== was : text !== was;
  });
}

export type Read = { now: VenueSettings; noNumbers: Place[] };

/**
 * The whole settings with what was typed put into them, and the fields that should hold a number and do not. An emptied field
 * takes the usual figure; thresholds of which none is stated are left out.
 */
export function readSettings(settings: VenueSettings, typed: Typed): Read {
  const now = structuredClone(settings) as Record<string, unknown>;
  const noNumbers: Place[] = [];
  for (const place of changedPlaces(settings, typed)) {
    const text = (typed[place] ?? "").trim();
    const number = readAmount(text, { decimalComma: true });
    if (!isText(place) && text !== "" && number === undefined) {
      noNumbers.push(place);
      continue;
    }
    const scaled = number === undefined || !IN_PERCENT.includes(place) ? number : number / 100;
    put(now, place, isText(place) ? text : text === "" ? undefined : scaled);
  }
  const read = now as VenueSettings;
  return { now: withUsual(read), noNumbers };
}

function isText(place: Place): boolean {
  return (TEXTS as readonly string[]).includes(place);
}

const CODES: readonly Place[] = ["country", "region"];

function put(settings: Record<string, unknown>, place: Place, value: string | number | undefined): void {
  const [part, key] = parted(place);
  if (key !== undefined) {
    const { [key]: _, ...others } = (settings[part] ?? {}) as Record<string, unknown>;
    settings[part] = value === undefined ? others : { ...others, [key]: value };
    if (Object.keys(settings[part] as object).length === 0) delete settings[part];
  } else if (place === "serviceLevel") settings.serviceLevel = value ?? null;
  else if (!CODES.includes(place)) settings[part] = value;
  else if (value === "") delete settings[part];
  else settings[part] = String(value).toUpperCase();
}

/** What was emptied, filled again with what is usual. */
function withUsual({ thresholds, ...settings }: VenueSettings): VenueSettings {
  return {
    ...settings,
    houseMl: { ...DEFAULT_HOUSE_ML, ...settings.houseMl },
    ...(thresholds === undefined ? {} : { thresholds: { ...DEFAULT_THRESHOLDS, ...thresholds } }),
  };
}

/** "areaTemperatureC.Back bar 2.0" → "areaTemperatureC", "Back bar 2.0": an area's name may hold a full stop. */
function parted(place: Place): [part: keyof VenueSettings, key?: string] {
  const dot = place.indexOf(".");
  if (dot === -1) return [place as keyof VenueSettings];
  return [place.slice(0, dot) as keyof VenueSettings, place.slice(dot + 1)];
}

/** What past weeks are reckoned with: to change it changes figures that were already read. */
export function reachesBack(place: Place): boolean {
  return place === "oz" || /^(houseMl|areaTemperatureC)\./.test(place);
}
