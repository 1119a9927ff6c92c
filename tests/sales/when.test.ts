import { describe, expect, it } from "vitest";
import { dividerAt, isBefore } from "#engine/sales/when.ts";

const clock = { timeZone: "Europe/Lisbon", dayEnds: "04:00" };
const mondayMorning = dividerAt("2026-03-02T10:00:00Z", clock);

describe("a count divides what came before it from what came after", () => {
  it.each([
    {
      what: "a sale before it",
      when: { businessDate: "2026-03-02", at: "2026-03-02T09:59:59Z", timed: true },
      before: true,
    },
    {
      what: "a movement at exactly its moment",
      when: { businessDate: "2026-03-02", at: "2026-03-02T10:00:00Z", timed: true },
      before: false,
    },
    {
      what: "the whole timed day before",
      when: { businessDate: "2026-03-01", at: null, timed: true },
      before: true,
    },
    {
      what: "Sunday's sales without a time",
      when: { businessDate: "2026-03-01", at: null, timed: false },
      before: true,
    },
    {
      what: "Monday's sales without a time",
      when: { businessDate: "2026-03-02", at: null, timed: false },
      before: false,
    },
  ])("puts $what on the right side: before = $before", ({ when, before }) => {
    expect(isBefore(when, mondayMorning)).toBe(before);
  });

  it("puts a night's untimed sales before a count taken after closing", () => {
    const afterClose = dividerAt("2026-03-02T02:30:00Z", clock);
    expect(afterClose.businessDate).toBe("2026-03-01");
    expect(isBefore({ businessDate: "2026-03-01", at: null, timed: false }, afterClose)).toBe(true);
  });
});
