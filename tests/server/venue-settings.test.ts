import { beforeEach, describe, expect, it } from "vitest";
import { switchStaff } from "#db/staff-repository.ts";
import type { Venue, VenueSettings } from "#engine/venue.ts";
import { handBook } from "#tests/support/hand-bar.ts";
import { aTestApp, type TestApp } from "#tests/support/test-app.ts";

let app: TestApp;
let was: VenueSettings;
beforeEach(async () => {
  app = await aTestApp(handBook());
  const { keepStaff: _, ...settings } = (await app.get("/api/venue")).body as Venue;
  was = settings;
});
const save = (part: Partial<VenueSettings>, from = was) =>
  app.post("/api/venue/settings", { was: from, now: { ...from, ...part } });
const stands = async () => (await app.get("/api/venue")).body;

it("saves the whole, and leaves to the owner whether names of staff are kept", async () => {
  await switchStaff(app.db, true, { now: "2026-03-09T12:00:00Z" });
  expect((await save({ show: "cl", country: "DE", region: "BY" })).status).toBe(200);
  expect(await stands()).toEqual({ ...was, show: "cl", country: "DE", region: "BY", keepStaff: true });
  const { status } = await app.post("/api/venue/settings", { was, now: { ...was, keepStaff: false } });
  expect(status).toBe(422);
});

it("refuses what was read before somebody else saved, and changes nothing", async () => {
  await save({ show: "cl" });
  const late = await save({ name: "The Tin Gull" });
  expect([late.status, JSON.stringify(late.body)]).toEqual([422, expect.stringContaining("Somebody else")]);
  expect(await stands()).toEqual({ ...was, show: "cl" });
  expect((await save({ name: "The Tin Gull" }, { ...was, show: "cl" })).status).toBe(200);
});

describe("what makes no sense is refused at its field", () => {
  it.each<[string, (settings: VenueSettings) => Partial<VenueSettings>]>([
    ["now.name", () => ({ name: "" })],
    ["now.currency", () => ({ currency: "JPY" })],
    ["now.timeZone", () => ({ timeZone: "Asia/Tokyo" })],
    ["now.dayEnds", () => ({ dayEnds: "" })],
    ["now.serviceLevel", () => ({ serviceLevel: 1 })],
    ["now.country", () => ({ country: "QQ" })],
    ["now.region", () => ({ region: "BY" })],
    ["now.region", () => ({ country: "DE", region: "ZZ" })],
    ["now.houseMl.dash", ({ houseMl }) => ({ houseMl: { ...houseMl, dash: 0 } })],
    ["now.houseMl.splash", ({ houseMl }) => ({ houseMl: { ...houseMl, splash: 740 } })],
    ["now.areaTemperatureC.Bar", () => ({ areaTemperatureC: { Bar: -180 } })],
    [
      "now.thresholds.chaseRatio",
      () => ({ thresholds: { watchRatio: 3, chaseRatio: 2, chaseMoney: 10, falseAlarmRate: 0.2 } }),
    ],
    [
      "now.thresholds.falseAlarmRate",
      () => ({ thresholds: { watchRatio: 2, chaseRatio: 3, chaseMoney: 10, falseAlarmRate: 20 } }),
    ],
  ])("%s", async (field, part) => {
    const refused = await save(part(was));
    expect(refused).toMatchObject({
      status: 422,
      body: { problems: [{ field, message: expect.stringMatching(/\w/) }] },
    });
    expect(await stands()).toEqual(was);
  });
});
