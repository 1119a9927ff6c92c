import { describe, expect, it } from "vitest";
import { usedRatios } from "#engine/demand/used-ratio.ts";
import { factsOf } from "#engine/facts.ts";
import type { CountRow, Delivery } from "#engine/stock/movement.ts";
import { addDays } from "#engine/time.ts";
import { aCount, aDelivery, orderBook } from "../orders/order-bar.ts";
import { alikeWeeks } from "./sold-days.ts";

const MONDAY = "2026-01-05";
/** 20 sours a day of 50 ml gin: a week's gin is 7000 ml by the spec. */
const SALES = alikeWeeks({ monday: MONDAY, weeks: 8, ringName: "House sour", week: Array(7).fill(20) });
const AT = "2026-03-02T10:00:00Z";
/** The spec asks for 10 ml more from Wednesday 4 March on, after all of this. */
const BY_SPEC_ML = 7000;

/** Counts each Monday morning of a bar that uses so much gin a week, with a delivery of 7 litres each Tuesday. */
function weeksUsing(usedMl: readonly number[]): { counts: CountRow[]; deliveries: Delivery[] } {
  const counts: CountRow[] = [];
  const deliveries: Delivery[] = [];
  let stock = 9000;
  for (const [week, used] of [...usedMl, 0].entries()) {
    const monday = addDays(MONDAY, 7 * week);
    counts.push({ ...aCount("Gin", stock), count: monday, at: `${monday}T09:00:00Z` });
    deliveries.push(aDelivery({ at: `${addDays(monday, 1)}T11:00:00Z`, invoice: monday, quantity: 10 }));
    stock += 7000 - used;
  }
  return { counts, deliveries };
}

function ginRatio(usedMl: readonly number[], forget?: number) {
  const { counts, deliveries } = weeksUsing(usedMl);
  const entered = deliveries.filter((_, index) => index !== forget);
  const facts = factsOf(orderBook({ counts, deliveries: entered, areas: [] }));
  return usedRatios(facts, SALES, AT).get("Gin");
}

describe("what the bar really uses for what its specs say", () => {
  it("is as much where it is so", () => {
    expect(ginRatio(Array(8).fill(BY_SPEC_ML))?.ratio).toBeCloseTo(1, 2);
  });

  it("is a tenth more where every week uses a tenth more", () => {
    expect(ginRatio([7700, 7710, 7690, 7700, 7720, 7680, 7700, 7700])?.ratio).toBeCloseTo(1.1, 2);
  });

  it("does not move for one delivery that nobody entered", () => {
    expect(ginRatio(Array(8).fill(BY_SPEC_ML), 3)?.ratio).toBeCloseTo(1, 2);
  });

  it("is not told by two weeks", () => {
    expect(ginRatio([7700, 7700])).toBeUndefined();
  });

  it("is trusted less the more the weeks differ", () => {
    const steady = ginRatio([7700, 7700, 7700, 7700, 7700, 7700, 7700, 7700]);
    const wild = ginRatio([6000, 9500, 7700, 5500, 9900, 7700, 8800, 6600]);
    expect(wild?.variance).toBeGreaterThan(steady?.variance ?? 1);
    expect(wild?.ratio).toBeLessThan(1.1);
  });
});
