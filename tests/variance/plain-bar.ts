import type { Book } from "#engine/book.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import type { Batch, CountRow, Delivery } from "#engine/stock/movement.ts";
import { addDays } from "#engine/time.ts";
import { type VarianceReport, varianceReport } from "#engine/variance/report.ts";
import { barOf, counted, countNamed, cut, drink, item, pack, prep, sold, spec } from "./small-bar.ts";

const FIRST = "2026-06-01";
const WEEKS = 3;
const COUNTS = ["A", "B", "C", "D"];

/** Serves of each drink, every week. */
const SERVES = {
  Gimlet: 60,
  "Vodka Soda": 50,
  Daiquiri: 40,
  "Bitter Sweet": 35,
  "Old Cask": 30,
  "Dry Stir": 25,
  Palmetto: 30,
};
type DrinkName = keyof typeof SERVES;

/** One serve as written and as made, worked by hand: 2 dashes are 1.84 ml, 25 ml of juice a lime. */
export const POURED: Record<DrinkName, Record<string, number>> = {
  Gimlet: { Gin: 60, "Lime juice": 20, Syrup: 20 },
  "Vodka Soda": { Vodka: 50 },
  Daiquiri: { "White rum": 60, "Lime juice": 25, Syrup: 20 },
  "Bitter Sweet": { Gin: 30, Aperitif: 30, Vermouth: 30 },
  "Old Cask": { "Aged rum": 45, Bitters: 1.84, Syrup: 5 },
  "Dry Stir": { Gin: 75, Vermouth: 15 },
  Palmetto: { "Aged rum": 40, Vermouth: 40, Bitters: 1.84 },
};

const BOTTLE_ML: Record<string, number> = {
  Gin: 700,
  Vodka: 700,
  "White rum": 700,
  "Aged rum": 700,
  Aperitif: 700,
  Vermouth: 750,
  Bitters: 200,
};
const OPENING: Record<string, number> = {
  Gin: 30_000,
  Vodka: 20_000,
  "White rum": 20_000,
  "Aged rum": 20_000,
  Aperitif: 9000,
  Vermouth: 14_000,
  Bitters: 900,
  Sugar: 12_000,
  Syrup: 1500,
  "Lime juice": 1900,
  Lime: 700,
};
const BATCHES: { day: number; prep: string; made: number; uses: Record<string, number> }[] = [
  { day: 1, prep: "Syrup", made: 1000, uses: { Sugar: 600 } },
  { day: 3, prep: "Syrup", made: 1000, uses: { Sugar: 600 } },
  { day: 1, prep: "Lime juice", made: 1000, uses: { Lime: 40 } },
  { day: 4, prep: "Lime juice", made: 1000, uses: { Lime: 40 } },
];
/** Bottles delivered on the Wednesday of each week. */
const DELIVERED: Record<string, number> = { Gin: 6, Vodka: 4, "Aged rum": 2 };

/** What went wrong in the second week, between counts B and C. */
export type Trouble = {
  /** Stock gone beyond what the drinks took, in base units; negative for stock that came. */
  gone?: Record<string, number>;
  /** The same in the first week, before it. */
  goneBefore?: Record<string, number>;
  /** Changes what was written down. */
  counts?: (row: CountRow) => CountRow;
  deliveries?: (rows: Delivery[]) => Delivery[];
  batches?: (rows: Batch[]) => Batch[];
  sales?: (sales: SaleGroup[]) => SaleGroup[];
  sheets?: Partial<Book>;
};

const day = (week: number, offset: number) => addDays(FIRST, 7 * week + offset);

/** The variance between counts B and C of a bar that pours to the drop, but for one trouble. */
export function plainVariance(trouble: Trouble = {}): VarianceReport {
  const facts = barOf({ ...sheets(trouble), ...trouble.sheets });
  return varianceReport({
    facts,
    sales: (trouble.sales ?? ((all) => all))(allSales()),
    opening: countNamed(facts, "B"),
    closing: countNamed(facts, "C"),
    costPerBase: new Map(),
  });
}

function sheets(trouble: Trouble): Partial<Book> {
  const deliveries = Array.from({ length: WEEKS }, (_, week) => deliveriesOf(week)).flat();
  const batches = Array.from({ length: WEEKS }, (_, week) => batchesOf(week)).flat();
  return {
    items: [
      ...Object.keys(BOTTLE_ML).map((name) =>
        item(name, name === "Vodka" ? { pour: "free" } : name === "Bitters" ? { pour: "measured" } : {}),
      ),
      item("Sugar", { base: "g", category: "larder" }),
      item("Syrup", { category: "prep", inHouse: true }),
      item("Lime juice", { category: "prep", inHouse: true }),
      item("Lime", { base: "each", category: "fruit" }),
    ],
    packs: [
      ...Object.entries(BOTTLE_ML).map(([name, ml]) => pack(name, ml)),
      pack("Gin", 1000),
      pack("Sugar", 1000, { unit: "g" }),
      pack("Lime", 1, { unit: "each" }),
    ],
    drinks: Object.keys(SERVES).map((name) => drink(name)),
    specs: [
      ...spec("Gimlet", "2026-01-01", "60 ml Gin", "20 ml Lime juice", "20 ml Syrup"),
      ...spec("Vodka Soda", "2026-01-01", "50 ml Vodka"),
      ...spec("Daiquiri", "2026-01-01", "60 ml White rum | Aged rum", "25 ml Lime juice", "20 ml Syrup"),
      ...spec("Bitter Sweet", "2026-01-01", "30 ml Gin", "30 ml Aperitif", "30 ml Vermouth"),
      ...spec("Old Cask", "2026-01-01", "60 ml Aged rum", "2 dash Bitters", "10 ml Syrup"),
      ...spec("Old Cask", "2026-05-25", "45 ml Aged rum", "2 dash Bitters", "5 ml Syrup"),
      ...spec("Dry Stir", "2026-01-01", "75 ml Gin", "15 ml Vermouth"),
      ...spec("Palmetto", "2026-01-01", "40 ml Aged rum", "40 ml Vermouth", "2 dash Bitters"),
      ...spec("Syrup", "2026-01-01", "600 g Sugar"),
    ],
    preps: [prep("Syrup", 1000)],
    cuts: [cut("Lime", "Lime juice", 25, "ml", ["flesh"])],
    counts: countRows(trouble),
    deliveries: (trouble.deliveries ?? ((rows) => rows))(deliveries),
    batches: (trouble.batches ?? ((rows) => rows))(batches),
  };
}

function deliveriesOf(week: number): Delivery[] {
  return Object.entries(DELIVERED).map(([name, quantity]) => ({
    at: `${day(week, 2)}T10:00:00Z`,
    supplier: "Quarry Drinks",
    invoice: `Q${week}`,
    item: name,
    pack: `${BOTTLE_ML[name]} ml`,
    quantity,
    of: "container",
    priceTotalMinor: null,
    depositMinor: null,
    empties: null,
    by: "",
  }));
}

function batchesOf(week: number): Batch[] {
  return BATCHES.map(({ day: offset, prep: name, made }) => ({
    at: `${day(week, offset)}T14:00:00Z`,
    prep: name,
    made,
    unit: "ml",
    by: "",
    note: "",
  }));
}

/** A third on Tuesdays, the rest on Fridays. */
function allSales(): SaleGroup[] {
  return Array.from({ length: WEEKS }, (_, week) =>
    Object.entries(SERVES).flatMap(([name, serves]) => {
      const early = Math.floor(serves / 3);
      return [sold(day(week, 1), name, early), sold(day(week, 4), name, serves - early)];
    }),
  ).flat();
}

/** Stock truly there at each count, by plain sums. */
function stockAt(count: number, { gone = {}, goneBefore = {} }: Trouble): Record<string, number> {
  const stock = { ...OPENING };
  const add = (name: string, amount: number) => {
    stock[name] = (stock[name] ?? 0) + amount;
  };
  for (let week = 0; week < count; week++) {
    for (const [name, bottles] of Object.entries(DELIVERED)) add(name, bottles * (BOTTLE_ML[name] ?? 0));
    for (const { prep: name, made, uses } of BATCHES) {
      add(name, made);
      for (const [input, amount] of Object.entries(uses)) add(input, -amount);
    }
    for (const [name, serves] of Object.entries(SERVES)) {
      for (const [poured, ml] of Object.entries(POURED[name as DrinkName])) add(poured, -serves * ml);
    }
    const lost = { 0: goneBefore, 1: gone }[week] ?? {};
    for (const [name, amount] of Object.entries(lost)) add(name, -amount);
  }
  return stock;
}

/** The well holds the open bottle and two more, the store the rest. */
function countRows(trouble: Trouble): CountRow[] {
  return COUNTS.flatMap((name, index) => {
    const at = `${day(index, 0)}T09:00:00Z`;
    return Object.entries(stockAt(index, trouble)).flatMap(([of, amount]) => {
      const bottle = BOTTLE_ML[of];
      if (bottle === undefined) {
        const unit = of === "Sugar" ? "g" : of === "Lime" ? "each" : "ml";
        return [counted(name, at, of, { amount, unit })];
      }
      const bottles = Math.floor(amount / bottle);
      const open = amount / bottle - bottles;
      const size = `${bottle} ml`;
      return [
        counted(name, at, of, { pack: size, full: Math.min(2, bottles), parts: open > 1e-9 ? [open] : [] }),
        counted(name, at, of, { area: "Store", pack: size, full: Math.max(0, bottles - 2) }),
      ];
    });
  }).map(trouble.counts ?? ((row) => row));
}
