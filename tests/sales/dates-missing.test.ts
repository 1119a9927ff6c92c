import { describe, expect, it } from "vitest";
import { datesMissing } from "#engine/sales/dates-missing.ts";
import { datesFrom, weekdayOf } from "#engine/time.ts";

/** Three weeks to Saturday, 21 November 2026, of a bar that is closed on Sundays and Mondays. */
const sold = datesFrom({ from: "2026-11-02", to: "2026-11-21" }).filter(
  (date) => !["Sun", "Mon"].includes(weekdayOf(date)),
);

describe("the days that miss their sales", () => {
  it.each([
    // until, missing
    ["2026-11-22", []],
    ["2026-11-24", []],
    ["2026-11-25", ["2026-11-24"]],
    ["2026-11-29", ["2026-11-24", "2026-11-25", "2026-11-26", "2026-11-27", "2026-11-28"]],
  ])("before %s, of a bar with two days off, are %j", (until, missing) => {
    expect(datesMissing(sold, until)).toEqual(missing);
  });

  it("are all that follow where too little is known for a day off, or it sold once", () => {
    expect(datesMissing(sold.slice(-5), "2026-11-24")).toEqual(["2026-11-22", "2026-11-23"]);
    expect(datesMissing(["2026-11-08", ...sold].sort(), "2026-11-24")).toEqual(["2026-11-22"]);
  });

  it("are none where nothing was ever sold", () => {
    expect(datesMissing([], "2026-11-24")).toEqual([]);
  });
});
