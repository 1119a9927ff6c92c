import { describe, expect, it } from "vitest";
import { PrepCycleError } from "#engine/specs/bill.ts";
import { anItem, aSale, specLines } from "#tests/support/hand-bar.ts";
import { aBatch, counted, daily, planOf, prepBook } from "./hand-prep.ts";

function batchOf(plan: ReturnType<typeof planOf>, prep: string) {
  const batch = plan.batches.find((planned) => planned.prep === prep);
  if (batch === undefined) throw new Error(`no batch of ${prep} was planned`);
  return batch;
}

describe("a day's prep plan, worked by hand", () => {
  it("has nothing to make, cut or throw out when nobody drinks", () => {
    const plan = planOf(prepBook(), daily({}));
    expect([plan.batches, plan.cuts, plan.discard, plan.enough, plan.pickList]).toEqual([[], [], [], [], []]);
  });

  it("nets a syrup once that drinks and a cordial both use", () => {
    const book = prepBook();
    book.counts.push(counted("Simple syrup", "2026-03-02T10:00:00Z", 400));
    const plan = planOf(book, daily({ "Simple syrup": 100, "Lime cordial": 100, "Lime juice": 200 }));
    // Cordial: 7 days × 100. It takes 500 syrup and 250 juice (500/700 and 250/700 of 700).
    expect(batchOf(plan, "Lime cordial")).toMatchObject({ make: 700, need: 700, onHand: 0, forBatches: 0 });
    // Syrup: 7 × 100 by drinks + 500 by the cordial − 400 counted.
    const syrup = batchOf(plan, "Simple syrup");
    expect(syrup.need).toBeCloseTo(1200, 9);
    expect(syrup.onHand).toBe(400);
    expect(syrup.make).toBeCloseTo(800, 9);
    expect(syrup.forBatches).toBeCloseTo(500, 9);
    // Juice: today's 200 + 250 for the cordial; the cordial keeps longer, so no later making of it counts.
    expect(batchOf(plan, "Lime juice").make).toBeCloseTo(450, 9);
  });

  it("makes a week's syrup for the cordials of the whole week when cordial keeps only two days", () => {
    const book = prepBook();
    book.preps = book.preps.map((prep) =>
      prep.prep === "Lime cordial" ? { ...prep, shelfLifeDays: 2 } : prep,
    );
    const plan = planOf(book, daily({ "Lime cordial": 70 }));
    expect(batchOf(plan, "Lime cordial").make).toBeCloseTo(140, 9);
    // 140 now and 5 × 70 later, 5/7 of it syrup: 100 + 250.
    expect(batchOf(plan, "Simple syrup").make).toBeCloseTo(350, 9);
  });

  it("presses what was peeled and shares limes between juice and wheels", () => {
    const plan = planOf(prepBook(), daily({ "Lime juice": 500 }, { "Lime wheel": 40, "Lime peel": 12 }));
    // Flesh: 500/25 + 40/8 = 25. Skin: 40/8 + 12/4 = 8. The flesh decides; the skin of 17 is left.
    expect(plan.cuts).toEqual([
      {
        source: "Lime",
        pieces: 25,
        gives: [
          { item: "Lime juice", amount: 500, unit: "ml" },
          { item: "Lime wheel", amount: 40, unit: "each" },
          { item: "Lime peel", amount: 12, unit: "each" },
        ],
        spare: [{ part: "skin", share: 17 }],
        // Juice 20 and wheels 5 pieces, each ± 8 %: √(1.6² + 0.4²) = 1.65, two of it 13.2 % of 25. 22.1 to 28.8.
        likely: { pieces: 25, piecesLow: 23, piecesHigh: 29 },
      },
    ]);
    expect(batchOf(plan, "Lime juice").inputs).toEqual([{ item: "Lime", amount: 20, base: "each" }]);
    expect(plan.pickList).toEqual([
      { item: "Lime", amount: 25, base: "each", weightG: 25 * 67, onHand: null, short: 0 },
    ]);
  });

  it("shows the flesh as spare when the skin decides", () => {
    const plan = planOf(prepBook(), daily({}, { "Lime peel": 10 }));
    expect(plan.cuts[0]).toMatchObject({ pieces: 2.5, spare: [{ part: "flesh", share: 2.5 }] });
    expect(plan.pickList[0]?.amount).toBe(3);
  });

  it("throws out the oldest batch past its date and counts the newer one as good", () => {
    const book = prepBook();
    // Cordial keeps 7 days: made 22 February, use by 28 February (day of making = day 1; US Food Code 3-501.17).
    book.batches.push(
      aBatch("Lime cordial", "2026-02-22T14:00:00Z", 700),
      aBatch("Lime cordial", "2026-02-27T14:00:00Z", 700),
    );
    book.counts.push(counted("Lime cordial", "2026-03-02T10:00:00Z", 900));
    const plan = planOf(book, daily({ "Lime cordial": 100 }));
    expect(plan.discard).toEqual([
      {
        prep: "Lime cordial",
        amount: 200,
        unit: "ml",
        madeAt: "2026-02-22T14:00:00Z",
        orOlder: false,
        useBy: "2026-02-28",
      },
    ]);
    // 700 good, but only until 5 March: 4 days × 100 can be used of it.
    expect(batchOf(plan, "Lime cordial")).toMatchObject({ onHand: 700, usable: 400, need: 700, make: 300 });
  });

  it("keeps yesterday's last-day juice out of today's stock", () => {
    const book = prepBook();
    book.batches.push(aBatch("Lime juice", "2026-03-01T14:00:00Z", 500));
    book.counts.push(counted("Lime juice", "2026-03-02T10:00:00Z", 80));
    const plan = planOf(book, daily({ "Lime juice": 300 }));
    expect(batchOf(plan, "Lime juice")).toMatchObject({ onHand: 0, make: 300, useBy: "2026-03-02" });
    expect(plan.discard).toMatchObject([{ prep: "Lime juice", amount: 80 }]);
  });

  it("takes days that nobody has read in off the old stock, and never off what was made today", () => {
    const demand = daily({ "Simple syrup": 100, "Lime juice": 300 });
    const sales = [aSale("2026-02-26T20:00:00Z", "Mystery")];
    const plan = (at: string) => {
      const book = prepBook();
      book.batches.push(aBatch("Lime juice", at, 300), aBatch("Simple syrup", at, 900));
      return planOf(book, demand, { sales, at: "2026-03-02T14:00:00Z" });
    };
    // Friday to Sunday took 300 of Thursday's syrup; Monday's is whole, and the juice does for tonight.
    expect(batchOf(plan("2026-02-26T14:00:00Z"), "Simple syrup").onHand).toBeCloseTo(600, 9);
    const today = plan("2026-03-02T13:00:00Z");
    expect(today.batches.map(({ prep }) => prep)).not.toContain("Lime juice");
    expect(today.enough).toMatchObject([
      { prep: "Lime juice", onHand: 300 },
      { prep: "Simple syrup", onHand: 900 },
    ]);
  });

  it("does not ask again for what was made today and came out a little short", () => {
    const askedAfter = (made: number) => {
      const book = prepBook();
      book.batches.push(aBatch("Lime juice", "2026-03-02T13:00:00Z", made));
      return planOf(book, daily({ "Lime juice": 1000 })).batches.map(({ make }) => make);
    };
    expect(askedAfter(960)).toEqual([]);
    expect(askedAfter(900)).toEqual([100]);
  });

  it("rounds up to the batch step and splits by the vessel", () => {
    const book = prepBook();
    book.preps = book.preps.map((prep) =>
      prep.prep === "Simple syrup" ? { ...prep, batchStep: 813, vesselMax: 2000 } : prep,
    );
    const plan = planOf(book, daily({ "Simple syrup": 300 }));
    // 2100 → 3 × 813 = 2439, two steps to a vessel.
    expect(batchOf(plan, "Simple syrup")).toMatchObject({ make: 2439, batches: 2, loads: [1626, 813] });
  });

  it("makes for as many days as asked, and never for longer than a batch keeps", () => {
    const demand = daily({ "Simple syrup": 100, "Lime juice": 50 });
    expect(batchOf(planOf(prepBook(), demand, { days: 3 }), "Simple syrup").make).toBe(300);
    expect(batchOf(planOf(prepBook(), demand, { days: 10 }), "Simple syrup").make).toBe(1000);
    expect(batchOf(planOf(prepBook(), demand, { days: 3 }), "Lime juice").make).toBe(50);
  });

  it("begins with what others are made of", () => {
    const plan = planOf(prepBook(), daily({ "Lime cordial": 100 }));
    expect(plan.batches.map(({ prep, order }) => [order, prep])).toEqual([
      [1, "Lime juice"],
      [2, "Simple syrup"],
      [3, "Lime cordial"],
    ]);
    expect(batchOf(plan, "Lime cordial").readyAt).toBe("2026-03-03T02:30:00Z");
  });

  it("says what is missing for a batch, and how far the stock goes", () => {
    const book = prepBook();
    book.counts.push(
      counted("Sugar", "2026-03-02T10:00:00Z", 250, "g"),
      counted("Lime", "2026-03-02T10:00:00Z", 6, "each"),
    );
    const plan = planOf(book, daily({ "Simple syrup": 1626 / 7, "Lime juice": 200 }));
    const syrup = batchOf(plan, "Simple syrup");
    expect(syrup.limitedBy).toEqual(["Sugar"]);
    expect(syrup.missing).toMatchObject([{ item: "Sugar", base: "g", available: 250 }]);
    expect(syrup.missing[0]?.short).toBeCloseTo(750, 6);
    expect(syrup.canMake).toBeCloseTo(406.5, 6);
    // 8 limes asked, 6 there: 150 ml.
    expect(batchOf(plan, "Lime juice").canMake).toBeCloseTo(150, 9);
    expect(syrup.make).toBeCloseTo(1626, 6);
  });

  it("gives the second of two batches only what the first left", () => {
    const book = prepBook();
    book.counts.push(counted("Lime", "2026-03-02T10:00:00Z", 10, "each"));
    book.items.push(anItem({ name: "Soda juice", base: "ml", inHouse: true, shelfLifeDays: 1 }));
    book.cuts.push({
      source: "Lime",
      from: null,
      gives: "Soda juice",
      perPiece: 25,
      unit: "ml",
      parts: ["flesh"],
    });
    const plan = planOf(book, daily({ "Lime juice": 200, "Soda juice": 200 }));
    expect(plan.batches.map(({ canMake }) => canMake)).toEqual([200, 50]);
  });

  it("takes the days between the last sale on record and the day of prep off the stock", () => {
    const book = prepBook();
    book.counts.push(counted("Simple syrup", "2026-02-27T10:00:00Z", 900));
    const sale = {
      at: null,
      timed: true,
      ringName: "Nothing known",
      modifiers: "",
      quantity: 1,
      netMinor: 0,
    };
    const sales = [{ ...sale, businessDate: "2026-02-27" }];
    const plan = planOf(book, daily({ "Simple syrup": 100 }), { sales });
    // 28 February and 1 March are still to come off: 700 left, which the week needs.
    expect(plan.batches).toEqual([]);
    expect(plan.enough).toEqual([{ prep: "Simple syrup", unit: "ml", need: 700, onHand: 700 }]);
  });

  it("keeps a safety share at the prep's own service level", () => {
    const book = prepBook();
    book.items = book.items.map((item) =>
      item.name === "Lime juice" ? { ...item, serviceLevel: 0.9 } : item,
    );
    const plan = planOf(book, daily({ "Lime juice": 300 }, {}, 0.2));
    // Gamma of mean 300 and standard deviation 60: shape 25, scale 12; chi-square 50 at 0.9 is 63.167, half of it × 12
    // (from memory of the chi-square table).
    expect(batchOf(plan, "Lime juice").need).toBeCloseTo((63.167 / 2) * 12, 1);
  });

  it("refuses stocked preps that are made of each other, naming the circle", () => {
    const book = prepBook();
    book.specs.push(...specLines("Simple syrup", "2026-02-01", ["100 ml Lime cordial", "900 g Sugar"]));
    expect(() => planOf(book, daily({ "Simple syrup": 1 }))).toThrow(PrepCycleError);
    expect(() => planOf(book, daily({ "Simple syrup": 1 }))).toThrow(
      /Simple syrup → Lime cordial|Lime cordial → Simple syrup/,
    );
  });

  it("uses the spec of the day of prep", () => {
    const book = prepBook();
    book.specs.push(...specLines("Simple syrup", "2026-03-02", ["1200 g Sugar", "800 ml Water"]));
    const inputs = (date: string) =>
      batchOf(planOf(book, daily({ "Simple syrup": 1626 / 7 }), { date }), "Simple syrup").inputs;
    expect(inputs("2026-03-01")[0]?.amount).toBeCloseTo(1000, 6);
    expect(inputs("2026-03-02")[0]?.amount).toBeCloseTo(1200, 6);
  });

  it("speaks of a juice that only a cut gives in the cut's unit", () => {
    const book = prepBook();
    book.cuts = book.cuts.map((cut) =>
      cut.gives === "Lime juice" ? { ...cut, perPiece: 1, unit: "oz" } : cut,
    );
    const batch = batchOf(planOf(book, daily({ "Lime juice": 295.735295625 })), "Lime juice");
    expect(batch).toMatchObject({ unit: "oz", inputs: [{ item: "Lime" }] });
    expect(batch.make).toBeCloseTo(10, 9);
    expect(batch.inputs[0]?.amount).toBeCloseTo(10, 9);
  });
});

describe("what the cook can leave for another day", () => {
  it("is a batch whose stock covers today; not one that stands overnight and would be missing tomorrow", () => {
    const book = prepBook();
    book.counts.push(
      counted("Simple syrup", "2026-03-02T10:00:00Z", 130),
      counted("Lime cordial", "2026-03-02T10:00:00Z", 150),
    );
    const plan = planOf(book, daily({ "Simple syrup": 100, "Lime cordial": 100 }));
    // The cordial's batch of 550 ml takes 393 ml of syrup today.
    expect(plan.batches.map(({ prep, canWait }) => [prep, canWait])).toEqual([
      ["Lime juice", false],
      ["Simple syrup", false],
      ["Lime cordial", false],
    ]);
    const alone = planOf(book, daily({ "Simple syrup": 100 }));
    expect(alone.batches).toMatchObject([{ prep: "Simple syrup", canWait: true, runsOutOn: "2026-03-03" }]);
  });

  it("is not made, and takes nothing of what it is made of, when only what is due is planned", () => {
    const book = prepBook();
    book.counts.push(counted("Lime cordial", "2026-03-02T10:00:00Z", 300));
    const demand = daily({ "Lime cordial": 100, "Simple syrup": 100 });
    const plan = planOf(book, demand, { onlyDue: true });
    expect(plan.batches).toMatchObject([{ prep: "Simple syrup", make: 700, forBatches: 0 }]);
    expect(plan.later).toEqual([
      { prep: "Lime cordial", unit: "ml", need: 700, onHand: 300, runsOutOn: "2026-03-05" },
    ]);
    // Filled up instead: 400 cordial, with 5/7 of it in syrup.
    const filled = planOf(book, demand);
    expect(batchOf(filled, "Simple syrup").make).toBeCloseTo(700 + (400 * 5) / 7, 6);
    expect(filled.later).toEqual([]);
  });

  it("is told apart from what comes too late for tonight", () => {
    const plan = planOf(prepBook(), daily({ "Lime cordial": 100 }));
    expect(batchOf(plan, "Lime cordial")).toMatchObject({ runsOutOn: "2026-03-02", tooLateTonight: true });
    expect(batchOf(plan, "Lime juice").tooLateTonight).toBe(false);
  });

  it("is tomorrow's juice: what keeps two days is pressed for one where the kitchen presses daily", () => {
    const book = prepBook();
    book.items = book.items.map((item) =>
      item.name === "Lime juice" ? { ...item, shelfLifeDays: 2 } : item,
    );
    book.counts.push(counted("Lime juice", "2026-03-02T10:00:00Z", 0));
    for (const day of ["24", "25", "26", "27"]) {
      book.batches.push(aBatch("Lime juice", `2026-02-${day}T13:30:00Z`, 300));
    }
    const demand = daily({ "Lime juice": 300 });
    const paced = batchOf(planOf(book, demand), "Lime juice");
    expect(paced).toMatchObject({ make: 300, coversUntil: "2026-03-02", untilNext: null });
    const asked = batchOf(planOf(book, demand, { days: 2 }), "Lime juice");
    expect(asked).toMatchObject({ make: 600, untilNext: { days: 1, need: 300, make: 300 } });
  });

  it("is nothing that nobody knows how to make", () => {
    const book = prepBook();
    book.items.push(anItem({ name: "Shrub", base: "ml", inHouse: true }));
    const plan = planOf(book, daily({ Shrub: 50 }));
    expect(plan.batches).toEqual([]);
    expect(plan.noRecipe).toEqual(["Shrub"]);
  });
});

describe("a syrup by weight", () => {
  it("tells the °Brix and the volume it must reach (published sucrose tables)", () => {
    const plan = planOf(prepBook(), daily({ "Simple syrup": 1626 / 7 }));
    const syrup = batchOf(plan, "Simple syrup");
    // 1 kg + 1 kg → 50 °Bx and 1.626 l at 20 °C, by the ICUMSA polynomial and the handbook's 1229.5 kg/m³ at 50 °Bx.
    expect(syrup.weightsG?.Sugar).toBeCloseTo(1000, 6);
    expect(syrup.weightsG?.Water).toBeCloseTo(998.2, 1);
    expect(syrup.brix).toBeCloseTo(50, 0);
    expect(Math.abs((syrup.mix?.volumeMl ?? 0) / 1626 - 1)).toBeLessThan(0.005);
    expect(syrup.cautions).toEqual([]);
  });

  it("counts the sugar of a syrup that goes in, and leaves °Brix out where juice or spirit does", () => {
    const book = prepBook();
    book.items = book.items.map((item) => (item.name === "Simple syrup" ? { ...item, brix: 50 } : item));
    book.specs = book.specs.map((line) =>
      line.item === "Lime juice" ? { ...line, amount: 500, item: "Water" } : line,
    );
    const cordial = batchOf(planOf(book, daily({ "Lime cordial": 100 })), "Lime cordial");
    // Equal volumes of 1.22965 g/ml at 50 °Bx and of water: 614.8 ÷ (1229.65 + 998.2) = 27.6 °Bx.
    expect(cordial.brix).toBeCloseTo((614.825 / (1229.65 + 998.2)) * 100, 2);
    const withJuice = batchOf(planOf(prepBook(), daily({ "Lime cordial": 100 })), "Lime cordial");
    expect(withJuice.brix).toBeUndefined();
  });

  it("warns of a yield that the weights cannot give and of sugar that comes out in the fridge", () => {
    const book = prepBook();
    book.specs = book.specs.map((line) => (line.item === "Sugar" ? { ...line, amount: 2000 } : line));
    const [yieldCaution, crystals] = batchOf(
      planOf(book, daily({ "Simple syrup": 1626 / 7 })),
      "Simple syrup",
    ).cautions;
    // 2 kg + 1 kg → 2.261 l (with a full kg of water; here 998.2 g), 66.67 °Bx; saturated at 4 °C: 64.8.
    expect(yieldCaution).toMatch(/come to 2259 ml/);
    expect(crystals).toMatch(/above saturation at 4 °C/);
  });
});
