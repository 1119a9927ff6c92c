import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { type SimulatedBar, simulateBar } from "./bar.ts";
import type { Catalogue } from "./catalogue.ts";
import type { Fault } from "./faults.ts";
import { HARBOUR_LANTERN } from "./lantern/bar.ts";
import { ringsOf } from "./mean-use.ts";
import { USUAL_NOISE } from "./opening.ts";
import { noiseRatios, rowsOf } from "./read-book.ts";
import { soldLines } from "./read-till.ts";
import { sampleFiles } from "./sample.ts";
import { SMALL_BAR, smallBar } from "./small-bar.ts";
import { FLOWS_IN, FLOWS_OUT } from "./stockroom.ts";
import { variedCatalogue } from "./vary.ts";

/** The columns a book may have: the contract, sheet by sheet. */
const CONTRACT: Record<string, string> = {
  "items.csv":
    "item category base abv brix density_g_per_ml piece_g shelf_life_days allergens in_house stocked pour service_level note",
  "packs.csv": "item pack amount unit from per_case supplier code gtin price price_per split empty_g full_g",
  "suppliers.csv": "supplier email minimum_value minimum_cases",
  "supplier-days.csv": "supplier order_day order_by delivery_day delivery_at",
  "closures.csv": "supplier from to",
  "areas.csv": "area item shelf",
  "drinks.csv":
    "drink price glass glass_ml ice technique garnish_note method allergens on_menu_from on_menu_until",
  "preps.csv":
    "prep from yield unit batch_step vessel_max active_minutes standing_hours shelf_life_days method",
  "specs.csv": "makes from line amount unit item or_items note",
  "cuts.csv": "source from gives per_piece unit parts",
  "ring-names.csv": "ring_name sold_as serves amount unit",
  "modifiers.csv": "modifier effect item with amount unit factor",
  "counts.csv": "count at area item pack full part gross_g amount unit by",
  "deliveries.csv": "at supplier invoice item pack quantity of price_total by",
  "batches.csv": "at prep made unit by note",
  "losses.csv": "at kind what amount unit by note",
  "transfers.csv": "at direction place item amount unit",
  "events.csv": "date event factor",
  "plans.csv": "date drink serves",
  "orders.csv": "order placed supplier item pack quantity of expected",
};

const clean = simulateBar({ seed: 7, weeks: 13, faults: [] });

describe("a simulated bar", () => {
  it("is the same to the byte for the same seed", () => {
    expect(smallBar({ seed: 3 })).toEqual(smallBar({ seed: 3 }));
  });

  it("has other nights for another seed", () => {
    expect(smallBar({ seed: 3 }).truth.serves).not.toEqual(smallBar({ seed: 4 }).truth.serves);
  });

  it("keeps guests' orders as they were until the trouble begins", () => {
    const fault: Fault = { kind: "over-pour", week: 3, untilWeek: 4, item: "Vodka", share: 0.2 };
    const [before, after] = [smallBar({ seed: 3 }), smallBar({ seed: 3, faults: [fault] })];
    expect(after.truth.weeks.slice(0, 2)).toEqual(before.truth.weeks.slice(0, 2));
    expect(after.truth.weeks[2]?.items.Vodka?.byDrinks).toBeGreaterThan(
      1.1 * (before.truth.weeks[2]?.items.Vodka?.byDrinks ?? 0),
    );
  });

  it("refuses a run of no weeks", () => {
    expect(() => smallBar({ seed: 1, weeks: 0 })).toThrow("weeks must be a whole number from 1, not 0");
  });
});

describe.each<[string, SimulatedBar]>([
  ["the Harbour Lantern", clean],
  ["the Short Plank", smallBar({ seed: 5 })],
  [
    "a busier bar of the same kind",
    simulateBar({
      seed: 8,
      weeks: 4,
      faults: [],
      catalogue: variedCatalogue({ catalogue: HARBOUR_LANTERN, seed: 8 }),
    }),
  ],
])("%s", (_, bar) => {
  it("conserves every item: what came in and did not leave is there", () => {
    for (const { items } of bar.truth.weeks) {
      for (const [item, flows] of Object.entries(items)) {
        const came = FLOWS_IN.reduce((sum, flow) => sum + flows[flow], flows.opening);
        const left = FLOWS_OUT.reduce((sum, flow) => sum + flows[flow], 0);
        expect(came - left, item).toBeCloseTo(flows.closing, 4);
      }
    }
  });

  it("opens each week with what the week before closed with", () => {
    bar.truth.weeks.slice(1).forEach(({ items }, index) => {
      for (const [item, { opening }] of Object.entries(items)) {
        expect(opening).toBe(bar.truth.weeks[index]?.items[item]?.closing);
      }
    });
  });

  it("never holds less than nothing", () => {
    const holdings = bar.truth.weeks.flatMap(({ items }) =>
      Object.values(items).map(({ closing }) => closing),
    );
    expect(Math.min(...holdings)).toBeGreaterThanOrEqual(0);
  });

  it("writes only sheets and columns of the contract", () => {
    for (const sheet of Object.keys(bar.book).filter((name) => name !== "venue.json")) {
      const allowed = CONTRACT[sheet]?.split(" ");
      const used = bar.book[sheet]
        ?.split("\n")[0]
        ?.split(",")
        .filter((column) => column !== "");
      expect(allowed, sheet).toEqual(expect.arrayContaining(used ?? []));
    }
  });

  it("names nothing that its own sheets do not define", () => {
    expect(danglingReferences(bar)).toEqual([]);
  });
});

/** Every name in the book that no sheet defines, as "sheet: name". */
function danglingReferences({ book }: SimulatedBar): string[] {
  const column = (sheet: string, name: string) => rowsOf(book, sheet).map((row) => row[name] ?? "");
  const items = new Set(column("items.csv", "item"));
  const drinks = new Set(column("drinks.csv", "drink"));
  const suppliers = new Set([...column("suppliers.csv", "supplier"), "all"]);
  const packs = new Set(rowsOf(book, "packs.csv").map(({ item, pack }) => `${item} ${pack}`));
  const packed = (sheet: string) =>
    rowsOf(book, sheet)
      .filter(({ pack }) => (pack ?? "") !== "")
      .map(({ item, pack }) => `${item} ${pack}`);
  const missing = (sheet: string, names: string[], known: Set<string>) =>
    names.filter((name) => name !== "" && !known.has(name)).map((name) => `${sheet}: ${name}`);

  const itemColumns = ["packs", "areas", "specs", "counts", "deliveries", "orders", "transfers", "modifiers"];
  const both = new Set([...items, ...drinks]);
  return [
    ...itemColumns.flatMap((sheet) => missing(sheet, column(`${sheet}.csv`, "item"), items)),
    ...missing(
      "specs or_items",
      column("specs.csv", "or_items").flatMap((cell) => cell.split(";")),
      items,
    ),
    ...missing("modifiers with", column("modifiers.csv", "with"), items),
    ...missing("cuts", [...column("cuts.csv", "source"), ...column("cuts.csv", "gives")], items),
    ...missing("preps", [...column("preps.csv", "prep"), ...column("batches.csv", "prep")], items),
    ...missing("specs makes", column("specs.csv", "makes"), both),
    ...missing("losses", column("losses.csv", "what"), both),
    ...missing("ring-names", column("ring-names.csv", "sold_as"), new Set([...both, "ignore"])),
    ...missing("plans", column("plans.csv", "drink"), drinks),
    ...["packs", "supplier-days", "closures", "deliveries", "orders"].flatMap((sheet) =>
      missing(sheet, column(`${sheet}.csv`, "supplier"), suppliers),
    ),
    ...["counts", "deliveries", "orders"].flatMap((sheet) => missing(sheet, packed(`${sheet}.csv`), packs)),
  ];
}

describe("the till of a simulated bar", () => {
  it("rings, net of voids and with each line once, exactly the serves that were made", () => {
    expect(rungServes(clean, HARBOUR_LANTERN)).toEqual(clean.truth.serves);
  });

  it("repeats a day in two files, line for line", () => {
    const [second, third] = [clean.sales[1]?.text ?? "", clean.sales[2]?.text ?? ""];
    const linesOf = (text: string) =>
      text
        .split("\n")
        .slice(1)
        .filter((line) => line !== "");
    const shared = linesOf(third).filter((line) => linesOf(second).includes(line));
    expect(shared.length).toBeGreaterThan(60);
  });

  it("knows voids, modifiers, drinks on the house and sales after midnight", () => {
    const all = clean.sales.map(({ text }) => text).join("\n");
    const signs = [
      "Void",
      "Double",
      "Extra Lime, No Ice",
      "Gift Card",
      "Table Favorite",
      ",-1,",
      "1:05 AM",
      "T00:",
    ];
    expect(signs.filter((sign) => !all.includes(sign))).toEqual([]);
  });
});

/** Serves by business date and drink (or ring name of an item), from the files and ring-names.csv alone. */
function rungServes(bar: SimulatedBar, catalogue: Catalogue): Record<string, Record<string, number>> {
  const soldAs = new Map(
    catalogue.drinks.flatMap((drink) =>
      ringsOf(drink).map(({ name, serves }) => [name, { drink: drink.name, serves }] as const),
    ),
  );
  const serves: Record<string, Record<string, number>> = {};
  for (const { businessDate, ring, quantity } of soldLines(bar.sales)) {
    if (ring === catalogue.ignored?.ring) continue;
    const { drink, serves: each } = soldAs.get(ring) ?? { drink: ring, serves: 1 };
    const day = serves[businessDate] ?? {};
    serves[businessDate] = { ...day, [drink]: (day[drink] ?? 0) + quantity * each };
  }
  return withoutZeros(serves);
}

/** A void of the night's only sale of a drink leaves nothing to list. */
function withoutZeros(
  serves: Record<string, Record<string, number>>,
): Record<string, Record<string, number>> {
  return Object.fromEntries(
    Object.entries(serves).map(([date, day]) => [
      date,
      Object.fromEntries(Object.entries(day).filter(([, n]) => n !== 0)),
    ]),
  );
}

describe("the noise of a clean bar", () => {
  it("is what venue.json says: unexplained use over its standard deviation spreads near 1", () => {
    const ratios = noiseRatios(clean, HARBOUR_LANTERN).map(({ ratio }) => ratio);
    const spread = Math.sqrt(ratios.reduce((sum, ratio) => sum + ratio ** 2, 0) / ratios.length);
    expect(ratios.length).toBeGreaterThan(800);
    expect(spread).toBeGreaterThan(0.9);
    expect(spread).toBeLessThan(1.1);
    expect(JSON.parse(clean.book["venue.json"] ?? "").uncertainty).toEqual(USUAL_NOISE);
  });

  it("shows far wider where trouble was planted", () => {
    const faults: Fault[] = [{ kind: "breakage", week: 2, item: "Dry gin", containers: 2 }];
    const ratio = (bar: SimulatedBar) =>
      noiseRatios(bar, SMALL_BAR).find(({ item, week }) => item === "Dry gin" && week === 2)?.ratio ?? 0;
    expect(Math.abs(ratio(smallBar({ seed: 2 })))).toBeLessThan(4);
    expect(ratio(smallBar({ seed: 2, faults }))).toBeGreaterThan(8);
  });
});

/** One of each kind of trouble, and the size it must come to where that is known beforehand. */
const PLANTED: [Fault, string | [string, string], number | null][] = [
  [{ kind: "delivery-not-entered", week: 2, item: "Quillmere Vodka" }, "Quillmere Vodka", null],
  [{ kind: "delivery-entered-twice", week: 2, item: "Quillmere Vodka" }, "Quillmere Vodka", null],
  [{ kind: "delivery-short", week: 2, item: "Quillmere Vodka", containers: 1 }, "Quillmere Vodka", 1],
  [
    { kind: "wrong-pack-size", week: 2, item: "Wickerlamp Dry Gin", pack: "750 ml" },
    "Wickerlamp Dry Gin",
    null,
  ],
  [
    { kind: "container-miscounted", week: 2, item: "Thornquay Bourbon", sign: -1, containers: 1 },
    "Thornquay Bourbon",
    1,
  ],
  [{ kind: "area-skipped", week: 2, area: "Walk-in" }, "Lime", null],
  [
    { kind: "over-pour", week: 2, untilWeek: 2, item: "Quillmere Vodka", share: 0.1 },
    "Quillmere Vodka",
    null,
  ],
  [
    {
      kind: "poured-for-another",
      week: 2,
      drink: "Squall",
      spec: "Oarlock Aged Rum",
      poured: "Oarlock White Rum",
      share: 0.8,
    },
    ["Oarlock Aged Rum", "Oarlock White Rum"],
    null,
  ],
  [
    { kind: "rung-for-another", week: 2, rung: "Gin & Tonic", made: "Vodka Soda", serves: 10 },
    ["Gin & Tonic", "Vodka Soda"],
    10,
  ],
  [{ kind: "not-rung", week: 2, drink: "Brasketto Negroni", serves: 9 }, "Brasketto Negroni", 9],
  [{ kind: "older-spec", week: 7, untilWeek: 7, drink: "Tideline Margarita" }, "Tideline Margarita", null],
  [
    { kind: "unit-slip", drink: "Gangway Sour", item: "Ashbarrow Peated Whisky", unit: "dash" },
    "Gangway Sour",
    null,
  ],
  [{ kind: "batch-not-logged", week: 2, prep: "Simple Syrup" }, "Simple Syrup", null],
  [{ kind: "batch-thrown-out", week: 2, prep: "Simple Syrup" }, "Simple Syrup", null],
  [{ kind: "breakage", week: 2, item: "Thornquay Bourbon", containers: 2 }, "Thornquay Bourbon", 2],
  [{ kind: "yield-drift", week: 2, untilWeek: 2, fruit: "Lime", factor: 0.8 }, "Lime", null],
  [
    { kind: "unmapped-sale", week: 2, drink: "Elder Spritz", ringName: "Chef Special", serves: 6 },
    "Chef Special",
    6,
  ],
];

it.each(PLANTED)("plants %j, and the truth knows it", (fault, what, size) => {
  const bar = simulateBar({ seed: 11, weeks: "week" in fault ? fault.week : 1, faults: [fault] });
  const planted = bar.truth.planted.filter((one) => one.kind === fault.kind);
  const found = planted.find((one) => JSON.stringify(one.what) === JSON.stringify(what));
  expect(found?.size).toBeGreaterThan(0);
  if (size !== null) expect(found?.size).toBe(size);
});

describe("the demo bar", () => {
  const folder = fileURLToPath(new URL("../../sample-sales", import.meta.url));
  const files = sampleFiles();

  it("lies in sample-sales just as the simulation writes it", () => {
    const found = readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1));
    expect(found.sort()).toEqual([...files.keys()].sort());
    for (const [path, text] of files)
      expect(readFileSync(join(folder, path), "utf8") === text, path).toBe(true);
  });

  it("is under 4 MB", () => {
    const bytes = [...files.values()].reduce((sum, text) => sum + Buffer.byteLength(text), 0);
    expect(bytes).toBeLessThan(4_000_000);
  });

  it("lists in its README all the trouble planted in it", () => {
    for (const sign of [
      "area-skipped",
      "breakage",
      "over-pour",
      "container-miscounted",
      "unmapped-sale",
      "delivery-not-entered",
      "batch-not-logged",
    ]) {
      expect(files.get("README.md")).toContain(`| ${sign} |`);
    }
  });
});
