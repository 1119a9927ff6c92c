import "../support/english.ts";
import { describe, expect, it } from "vitest";
import type { HolidayAhead } from "#engine/demand/forecast.ts";
import { holidayWords } from "#engine/demand/holiday-words.ts";
import { holidayText } from "../../web/forecast/holiday-text.ts";
import { plainSpaces } from "../support/plain-spaces.ts";

const day: HolidayAhead = {
  date: "2026-12-08",
  name: "Lantern Day",
  kind: "holiday",
  factor: 1.18,
  cv2: 0.01,
  isClosed: false,
  hasEvent: false,
  seen: 1,
  seenOfKind: 5,
};

describe("holidayText", () => {
  it.each<Partial<HolidayAhead>>([
    {},
    { kind: "eve", factor: 0.8, seen: 2 },
    { kind: "weekend holiday", factor: 1, seen: 0, seenOfKind: 1 },
    { seen: 5 },
    { factor: 0.995 },
    { factor: 0.985 },
    { isClosed: true },
    { hasEvent: true },
    { seen: 0, seenOfKind: 0 },
  ])("says in English what the command line says: %o", (known) => {
    expect(plainSpaces(holidayText({ ...day, ...known }))).toBe(holidayWords({ ...day, ...known }));
  });
});
