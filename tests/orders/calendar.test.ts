import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nextOrder, orderChances } from "#engine/orders/calendar.ts";
import type { Closure, SupplierDay } from "#engine/orders/supplier.ts";
import { WEEKDAYS } from "#engine/time.ts";

function day(
  orderDay: SupplierDay["orderDay"],
  orderBy: string,
  deliveryDay: SupplierDay["deliveryDay"],
  deliveryAt: string,
): SupplierDay {
  return { supplier: "Quay Spirits", orderDay, orderBy, deliveryDay, deliveryAt };
}

const TWICE_A_WEEK = [day("Mon", "15:00", "Wed", "11:00"), day("Thu", "15:00", "Fri", "12:30")];

function asked(
  at: string,
  {
    supplierDays = TWICE_A_WEEK,
    closures = [],
    timeZone = "Etc/UTC",
  }: { supplierDays?: SupplierDay[]; closures?: Closure[]; timeZone?: string } = {},
) {
  return nextOrder({ supplierDays, closures, venue: { timeZone } }, "Quay Spirits", at);
}

// 2026-11-23 is a Monday.
describe("the next order", () => {
  it.each([
    ["2026-11-23T12:00:00Z", "2026-11-23T15:00:00Z", "2026-11-25T11:00:00Z", "2026-11-27T12:30:00Z"],
    ["2026-11-23T15:00:00Z", "2026-11-23T15:00:00Z", "2026-11-25T11:00:00Z", "2026-11-27T12:30:00Z"],
    ["2026-11-23T15:00:01Z", "2026-11-26T15:00:00Z", "2026-11-27T12:30:00Z", "2026-12-02T11:00:00Z"],
    ["2026-11-28T09:00:00Z", "2026-11-30T15:00:00Z", "2026-12-02T11:00:00Z", "2026-12-04T12:30:00Z"],
  ])("asked %s: by %s, arrives %s, covers until %s", (at, orderBy, arrives, coversUntil) => {
    expect(asked(at)).toEqual({ orderBy, arrives, coversUntil });
  });

  it("passes over an order day and a delivery day in a closure", () => {
    const closures = [{ supplier: null, from: "2026-11-27", to: "2026-11-27" }];
    expect(asked("2026-11-23T16:00:00Z", { closures }).arrives).toBe("2026-12-02T11:00:00Z");
    const monday = [{ supplier: "Quay Spirits", from: "2026-11-30", to: "2026-11-30" }];
    expect(asked("2026-11-27T16:00:00Z", { closures: monday }).orderBy).toBe("2026-12-03T15:00:00Z");
  });

  it("minds only the closures of its own supplier and of all", () => {
    const closures = [{ supplier: "Somebody else", from: "2026-11-23", to: "2026-12-23" }];
    expect(asked("2026-11-23T12:00:00Z", { closures }).orderBy).toBe("2026-11-23T15:00:00Z");
  });

  it.each([
    ["09:00", "16:00", "2026-11-24T16:00:00Z"],
    ["16:00", "09:00", "2026-12-01T09:00:00Z"],
    ["09:00", "09:00", "2026-12-01T09:00:00Z"],
  ])("ordered Tuesday by %s for Tuesday %s arrives %s", (orderBy, deliveryAt, arrives) => {
    const supplierDays = [day("Tue", orderBy, "Tue", deliveryAt)];
    expect(asked("2026-11-23T12:00:00Z", { supplierDays }).arrives).toBe(arrives);
  });

  it("keeps the supplier's clock when the clocks go back", () => {
    // America/New_York leaves daylight saving time on 2026-11-01 (IANA tzdata).
    const supplierDays = [day("Fri", "15:00", "Mon", "11:00")];
    expect(asked("2026-10-30T12:00:00Z", { supplierDays, timeZone: "America/New_York" })).toEqual({
      orderBy: "2026-10-30T19:00:00Z",
      arrives: "2026-11-02T16:00:00Z",
      coversUntil: "2026-11-09T16:00:00Z",
    });
  });

  it("goes by the venue's date, not by that of Greenwich", () => {
    const supplierDays = [day("Sun", "21:00", "Mon", "12:00")];
    // 01:30 in Greenwich on Monday is 20:30 on Sunday in New York.
    const next = asked("2026-11-23T01:30:00Z", { supplierDays, timeZone: "America/New_York" });
    expect(next.orderBy).toBe("2026-11-23T02:00:00Z");
  });

  it("says that no arrival is known of a supplier without days", () => {
    expect(asked("2026-11-23T12:00:00Z", { supplierDays: [] })).toEqual({
      orderBy: null,
      arrives: null,
      coversUntil: null,
    });
  });

  it("takes two order days for one delivery as one delivery", () => {
    const supplierDays = [day("Mon", "15:00", "Wed", "11:00"), day("Tue", "10:00", "Wed", "11:00")];
    expect(asked("2026-11-23T12:00:00Z", { supplierDays }).coversUntil).toBe("2026-12-02T11:00:00Z");
  });
});

describe("the calendar's laws", () => {
  const clock = fc.record({ h: fc.integer({ min: 0, max: 23 }), m: fc.integer({ min: 0, max: 59 }) });
  const clockText = clock.map(({ h, m }) => `${String(h).padStart(2, "0")}:${String(m).padStart(2, "0")}`);
  const supplierDay = fc.record({
    supplier: fc.constant("Quay Spirits"),
    orderDay: fc.constantFrom(...WEEKDAYS),
    orderBy: clockText,
    deliveryDay: fc.constantFrom(...WEEKDAYS),
    deliveryAt: clockText,
  });

  it("never delivers before the cut-off, nor more than eight days after it, nor asks for the past", () => {
    fc.assert(
      fc.property(
        fc.array(supplierDay, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 0, max: 60 * 24 * 40 }),
        (supplierDays, minutes) => {
          const at = new Date(Date.UTC(2026, 9, 1, 0, minutes)).toISOString().replace(".000", "");
          const venue = { timeZone: "Europe/Lisbon" };
          for (const chance of orderChances({ supplierDays, closures: [], venue }, "Quay Spirits", at)) {
            const hours = (Date.parse(chance.arrives) - Date.parse(chance.orderBy)) / 3_600_000;
            expect(chance.orderBy >= at).toBe(true);
            expect(hours).toBeGreaterThan(0);
            expect(hours).toBeLessThanOrEqual(8 * 24);
          }
        },
      ),
      { numRuns: 50 },
    );
  });
});
