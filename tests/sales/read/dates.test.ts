import { describe, expect, it } from "vitest";
import { dateText } from "#engine/sales/read/clock.ts";
import { DateOrderWitness } from "#engine/sales/read/date-order.ts";
import {
  type DateOrder,
  dayNumber,
  offsetInHeading,
  readDate,
  readMoment,
  readTimeOfDay,
} from "#engine/sales/read/moment.ts";

function decide(...cells: string[]) {
  const witness = new DateOrderWitness();
  for (const cell of cells) {
    const date = readDate(cell);
    if (date !== undefined) witness.add(date, cell);
  }
  return witness.decide();
}

function dayOf(cell: string, order: DateOrder): string | undefined {
  const date = readMoment(cell)?.date;
  const day = date == null ? undefined : dayNumber(date, date.order ?? order);
  return day === undefined ? undefined : dateText(day);
}

/** Orders of day, month and year by locale: Unicode CLDR date patterns (en-US M/d/y, en-GB dd/MM/y, de dd.MM.y, sv y-MM-dd). */
describe("a column of dates", () => {
  it.each([
    [["13/03/2025", "01/02/2025"], "dmy"],
    [["03/13/2025", "01/02/2025"], "mdy"],
    [["13/03/25", "14/03/25"], "dmy"],
    [["3-13-25"], "mdy"],
    [["32/01/05", "25/01/06"], "ymd"],
    [["05/05/2025"], "dmy"],
  ])("of %j is read %s", (cells, order) => {
    expect(decide(...cells)).toEqual({ kind: "decided", order });
  });

  it.each([
    [["01/02/2025", "03/04/2025"]],
    [["01/02/25"]],
    [["25-03-04", "25-03-05", "25-03-06"]],
    [["12/11/2025", "11/12/2025"]],
  ])("of %j could be read two ways and is asked about", (cells) => {
    expect(decide(...cells).kind).toBe("ambiguous");
  });

  it("that holds both orders is asked about with an example of each", () => {
    expect(decide("13/03/2025", "03/14/2025")).toEqual({
      kind: "contradictory",
      examples: ["13/03/2025", "03/14/2025"],
    });
  });

  it("is not confused by a day that exists in no order", () => {
    expect(decide("31/02/2025", "13/03/2025")).toEqual({ kind: "decided", order: "dmy" });
  });
});

it.each([
  ["2025-03-04", "dmy", "2025-03-04"],
  ["2025/3/4 21:05", "dmy", "2025-03-04"],
  ["04.03.2025", "mdy", "2025-03-04"],
  ["03/04/2025", "dmy", "2025-04-03"],
  ["03/04/2025", "mdy", "2025-03-04"],
  ["3/4/25 9 PM", "mdy", "2025-03-04"],
  ["20250304", "dmy", "2025-03-04"],
  ["20250304T210500Z", "dmy", "2025-03-04"],
  ["202503042105", "dmy", "2025-03-04"],
  ["4 Mar 2025", "mdy", "2025-03-04"],
  ["Mar 4th, 2025 21:05", "dmy", "2025-03-04"],
  ["Tue 4 March 2025, 21:05", "dmy", "2025-03-04"],
  ["4. März 2025", "dmy", "2025-03-04"],
  ["4 août 2025", "dmy", "2025-08-04"],
  ["4 de enero de 2025", "dmy", "2025-01-04"],
  ["4 dicembre 2025", "dmy", "2025-12-04"],
  ["2025-02-29", "dmy", undefined],
  ["2024-02-29", "dmy", "2024-02-29"],
  ["31/04/2025", "dmy", undefined],
  ["1066-10-14", "dmy", undefined],
  ["4/3", "dmy", undefined],
  ["soon", "dmy", undefined],
] as const)("reads the date %s (%s) as %s", (cell, order, date) => {
  expect(dayOf(cell, order)).toBe(date);
});

it.each([
  ["21:05", 75_900],
  ["9:05 pm", 75_900],
  ["9:05 p. m.", 75_900],
  ["12:00 AM", 0],
  ["12:30 PM", 45_000],
  ["9 PM", 75_600],
  ["21h05", 75_900],
  ["21.05", 75_900],
  ["21:05 Uhr", 75_900],
  ["2105", 75_900],
  ["210509", 75_909],
  ["21:05:09.250", 75_909],
  ["21", 75_600],
  ["21:00 - 22:00", 75_600],
  ["24:00", undefined],
  ["13:00 PM", undefined],
  ["21:60", undefined],
  ["late", undefined],
])("reads the time of day %s as %s seconds", (cell, second) => {
  expect(readTimeOfDay(cell)).toBe(second);
});

it.each([
  ["Sold at (UTC)", 0],
  ["timestamp_utc", 0],
  ["Time GMT+2", 7200],
  ["Time", null],
  ["Outcome", null],
])("finds in the heading %s the offset %s", (heading, offsetS) => {
  expect(offsetInHeading(heading)).toBe(offsetS);
});
