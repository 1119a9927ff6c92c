import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  businessDateOf,
  businessDateOfLocal,
  ClockError,
  instantToLocal,
  localToInstant,
} from "#engine/sales/read/clock.ts";

const berlin = { timeZone: "Europe/Berlin", dayEnds: "04:00" };
const newYork = { timeZone: "America/New_York", dayEnds: "04:00" };

/**
 * IANA tz database, file `europe`: rule EU, last Sunday of March and of October at 01:00 UTC, CET = UTC+1, CEST = UTC+2.
 * File `northamerica`: rule US from 2007, second Sunday of March and first Sunday of November at 02:00 wall clock,
 * EST = UTC−5, EDT = UTC−4.
 */
describe("a venue's clock on the nights the clocks change", () => {
  it.each([
    [berlin, "2025-03-30 01:59", "2025-03-30T00:59:00Z"],
    [berlin, "2025-03-30 03:00", "2025-03-30T01:00:00Z"],
    [berlin, "2025-10-26 01:59", "2025-10-25T23:59:00Z"],
    [berlin, "2025-10-26 03:00", "2025-10-26T02:00:00Z"],
    [newYork, "2025-03-09 01:59", "2025-03-09T06:59:00Z"],
    [newYork, "2025-03-09 03:00", "2025-03-09T07:00:00Z"],
    [newYork, "2025-11-02 00:59", "2025-11-02T04:59:00Z"],
    [newYork, "2025-11-02 02:00", "2025-11-02T07:00:00Z"],
    [{ timeZone: "Asia/Kolkata", dayEnds: "04:00" }, "2025-06-01 05:30", "2025-06-01T00:00:00Z"],
    [{ timeZone: "UTC", dayEnds: "04:00" }, "2025-06-01 05:30:07", "2025-06-01T05:30:07Z"],
  ])("keeps %o %s and %s as one moment, there and back", (clock, local, instant) => {
    expect(localToInstant(local, clock)).toBe(instant);
    expect(instantToLocal(instant, clock).startsWith(local)).toBe(true);
  });

  it.each([
    [berlin, "2025-03-30 02:30", "2025-03-30T01:30:00Z", "2025-03-30 03:30:00"],
    [newYork, "2025-03-09 02:15", "2025-03-09T07:15:00Z", "2025-03-09 03:15:00"],
  ])(
    "reads a time that spring skips (%o %s) as what clocks show after the jump",
    (clock, local, instant, shown) => {
      expect(localToInstant(local, clock)).toBe(instant);
      expect(instantToLocal(instant, clock)).toBe(shown);
    },
  );

  it.each([
    [berlin, "2025-10-26 02:30", "2025-10-26T00:30:00Z", "2025-10-26T01:30:00Z"],
    [newYork, "2025-11-02 01:30", "2025-11-02T05:30:00Z", "2025-11-02T06:30:00Z"],
  ])(
    "reads a time that autumn shows twice (%o %s) as the first of the two",
    (clock, local, first, second) => {
      expect(localToInstant(local, clock)).toBe(first);
      expect(instantToLocal(first, clock)).toBe(`${local}:00`);
      expect(instantToLocal(second, clock)).toBe(`${local}:00`);
    },
  );

  it("knows the day Samoa left out (tz file australasia: 30 December 2011 did not exist in Apia)", () => {
    const apia = { timeZone: "Pacific/Apia", dayEnds: "04:00" };
    expect(instantToLocal("2011-12-30T09:59:59Z", apia)).toBe("2011-12-29 23:59:59");
    expect(instantToLocal("2011-12-30T10:00:00Z", apia)).toBe("2011-12-31 00:00:00");
  });
});

describe("the business day", () => {
  it.each([
    ["2025-03-01 23:59", "2025-03-01"],
    ["2025-03-02 03:59:59", "2025-03-01"],
    ["2025-03-02 04:00", "2025-03-02"],
    ["2025-01-01 00:30", "2024-12-31"],
    ["2024-03-01 01:00", "2024-02-29"],
  ])("puts %s on %s where the day ends at four", (local, day) => {
    expect(businessDateOfLocal(local, berlin)).toBe(day);
    expect(businessDateOf(localToInstant(local, berlin), berlin)).toBe(day);
  });

  it("keeps the long autumn night and the short spring night on the evening before", () => {
    expect(businessDateOf("2025-10-26T01:30:00Z", berlin)).toBe("2025-10-25");
    expect(businessDateOf("2025-10-26T02:59:59Z", berlin)).toBe("2025-10-25");
    expect(businessDateOf("2025-10-26T03:00:00Z", berlin)).toBe("2025-10-26");
    expect(businessDateOf("2025-03-30T01:59:59Z", berlin)).toBe("2025-03-29");
    expect(businessDateOf("2025-03-30T02:00:00Z", berlin)).toBe("2025-03-30");
  });

  it("ends at midnight for a bar whose day ends at 00:00", () => {
    const plain = { timeZone: "Europe/Berlin", dayEnds: "00:00" };
    expect(businessDateOfLocal("2025-03-02 00:00", plain)).toBe("2025-03-02");
  });
});

it("brings every instant back from what the clocks show, but for the hour shown twice", () => {
  const zones = fc.constantFrom("Europe/Berlin", "America/New_York", "Australia/Lord_Howe", "Asia/Kathmandu");
  const seconds = fc.integer({ min: 946_684_800, max: 4_000_000_000 });
  fc.assert(
    fc.property(zones, seconds, (timeZone, second) => {
      const instant = `${new Date(second * 1000).toISOString().slice(0, 19)}Z`;
      const back = localToInstant(instantToLocal(instant, { timeZone }), { timeZone });
      const lateMs = Date.parse(instant) - Date.parse(back);
      expect([0, 1_800_000, 3_600_000]).toContain(lateMs);
      expect(instantToLocal(back, { timeZone })).toBe(instantToLocal(instant, { timeZone }));
    }),
  );
});

it("agrees with the platform's own time-zone rules hour by hour through a year", () => {
  for (const timeZone of ["Europe/Berlin", "America/New_York", "Australia/Lord_Howe"]) {
    const shown = new Intl.DateTimeFormat("sv-SE", { timeZone, dateStyle: "short", timeStyle: "medium" });
    for (let hour = 0; hour < 366 * 24; hour += 1) {
      const at = new Date(Date.UTC(2025, 0, 1, hour));
      expect(instantToLocal(`${at.toISOString().slice(0, 19)}Z`, { timeZone })).toBe(shown.format(at));
    }
  }
});

it.each(["", "yesterday", "2025-02-30 10:00", "2025-13-01 10:00", "2025-03-01 24:30", "01/03/2025 10:00"])(
  'says that "%s" is no local time',
  (local) => {
    expect(() => localToInstant(local, berlin)).toThrow(ClockError);
  },
);

it("says so for an unknown zone, a wrong day's end and a wrong instant", () => {
  expect(() => localToInstant("2025-03-01 10:00", { timeZone: "Mars/Base" })).toThrow(/no known time zone/);
  expect(() => businessDateOfLocal("2025-03-01 10:00", { dayEnds: "4 am" })).toThrow(/HH:MM/);
  expect(() => instantToLocal("2025-03-01 10:00", berlin)).toThrow(ClockError);
});

it("turns a hundred thousand moments without waiting", () => {
  const start = performance.now();
  for (let index = 0; index < 100_000; index += 1) {
    const second = 20 + (index % 40);
    localToInstant(`2025-0${1 + (index % 9)}-1${index % 10} 22:${second}`, berlin);
  }
  expect(performance.now() - start).toBeLessThan(5000);
});
