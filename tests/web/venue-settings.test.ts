import { describe, expect, it } from "vitest";
import { DEFAULT_UNCERTAINTY } from "#engine/measure/uncertainty.ts";
import { DEFAULT_HOUSE_ML } from "#engine/measure/units.ts";
import { DEFAULT_THRESHOLDS } from "#engine/variance/verdict.ts";
import type { Venue } from "#engine/venue.ts";
import {
  changedPlaces,
  heldAt,
  isPlace,
  type Place,
  reachesBack,
  readSettings,
  settingsOf,
  type Typed,
} from "../../web/venue/settings.ts";

const venue: Venue = {
  name: "The Tin Heron",
  currency: "EUR",
  timeZone: "Europe/Lisbon",
  dayEnds: "04:00",
  oz: "us",
  show: "ml",
  houseMl: { ...DEFAULT_HOUSE_ML, dash: 0.8 },
  serviceLevel: 0.07,
  uncertainty: { ...DEFAULT_UNCERTAINTY, reading: 0.03 },
  areaTemperatureC: { "Back bar no. 2": 4 },
  country: "DE",
  region: "BY",
  keepStaff: true,
};
const settings = settingsOf(venue);
const now = (typed: Typed) => readSettings(settings, typed).now;

describe("settings as they are read into the fields", () => {
  it.each<[Place, string | number]>([
    ["name", "The Tin Heron"],
    ["houseMl.dash", 0.8],
    // 0.07 × 100 is 7.000000000000001 in floating point.
    ["serviceLevel", 7],
    ["areaTemperatureC.Back bar no. 2", 4],
    ["areaTemperatureC.Cellar", ""],
    ["thresholds.watchRatio", ""],
  ])("%s holds %s", (place, held) => expect(heldAt(settings, place)).toBe(held));

  it("are all but whether names of staff are kept", () => {
    const { keepStaff: _, ...others } = venue;
    expect(settings).toEqual(others);
  });
});

describe("settings as they are written from the fields", () => {
  it("stay as they were where nothing was typed, or typed back", () => {
    expect(now({})).toEqual(settings);
    const back: Typed = { name: " The Tin Heron ", "houseMl.dash": "0,80", serviceLevel: "7", region: "BY" };
    expect(changedPlaces(settings, back)).toEqual([]);
    expect(now(back)).toEqual(settings);
  });

  it("change where something was typed, and nowhere else", () => {
    expect(now({ show: "oz", "houseMl.dash": "0,9", serviceLevel: "95", region: "be" })).toEqual({
      ...settings,
      show: "oz",
      houseMl: { ...settings.houseMl, dash: 0.9 },
      serviceLevel: 0.95,
      region: "BE",
    });
    expect(now({ "areaTemperatureC.Freezer": "−18" }).areaTemperatureC).toEqual({
      "Back bar no. 2": 4,
      Freezer: -18,
    });
  });

  it("take what is usual where a field was emptied", () => {
    const { country: _, region: __, areaTemperatureC: ___, ...others } = settings;
    expect(
      now({
        country: "",
        region: " ",
        "houseMl.dash": "",
        serviceLevel: "",
        "areaTemperatureC.Back bar no. 2": "",
      }),
    ).toEqual({ ...others, houseMl: DEFAULT_HOUSE_ML, serviceLevel: null });
  });

  it("state all thresholds once one is, and none once the last is emptied", () => {
    const stated = now({ "thresholds.falseAlarmRate": "10" });
    expect(stated.thresholds).toEqual({ ...DEFAULT_THRESHOLDS, falseAlarmRate: 0.1 });
    const none: Typed = {
      "thresholds.watchRatio": "",
      "thresholds.chaseRatio": "",
      "thresholds.chaseMoney": "",
      "thresholds.falseAlarmRate": "",
    };
    expect(readSettings(stated, none).now).toEqual(settings);
  });

  it("name the fields that hold no number, and leave what those were", () => {
    const read = readSettings(settings, { "houseMl.drop": "a little", "thresholds.chaseMoney": "25" });
    expect(read.noNumbers).toEqual(["houseMl.drop"]);
    expect(read.now.houseMl).toEqual(settings.houseMl);
  });
});

it("knows its fields by the names that the server gives them", () => {
  const names = ["name", "houseMl.dash", "areaTemperatureC.Bar. 2", "currency", "uncertainty.reading", ""];
  expect(names.filter(isPlace)).toEqual(["name", "houseMl.dash", "areaTemperatureC.Bar. 2"]);
});

it("knows which of them past weeks are reckoned with", () => {
  const places: Place[] = ["oz", "houseMl.dash", "areaTemperatureC.Freezer", "show", "dayEnds", "name"];
  expect(places.filter(reachesBack)).toEqual(["oz", "houseMl.dash", "areaTemperatureC.Freezer"]);
});
