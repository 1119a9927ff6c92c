import type { Book } from "#engine/book.ts";
import { DEFAULT_UNCERTAINTY } from "#engine/measure/uncertainty.ts";
import { DEFAULT_HOUSE_ML, type Unit } from "#engine/measure/units.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import type { SpecLine } from "#engine/specs/spec.ts";
import type { Item } from "#engine/stock/item.ts";
import { newItem } from "#engine/stock/new-item.ts";

/** An item with nothing known of it but what is given. */
export function anItem(facts: Pick<Item, "name" | "base"> & Partial<Item>): Item {
  return newItem({ category: "other", ...facts });
}

/** A book of a bar that has nothing yet. Its clock is that of UTC, its day ends at 04:00. */
export function anEmptyBook(): Book {
  return {
    venue: {
      name: "The Paper Boat",
      currency: "EUR",
      timeZone: "Etc/UTC",
      dayEnds: "04:00",
      oz: "us",
      show: "ml",
      houseMl: DEFAULT_HOUSE_ML,
      serviceLevel: 0.95,
      uncertainty: DEFAULT_UNCERTAINTY,
    },
    items: [],
    packs: [],
    suppliers: [],
    supplierDays: [],
    closures: [],
    areas: [],
    drinks: [],
    preps: [],
    specs: [],
    cuts: [],
    ringNames: [],
    modifiers: [],
    counts: [],
    deliveries: [],
    batches: [],
    batchInputs: [],
    losses: [],
    transfers: [],
    events: [],
    plans: [],
    orders: [],
    salesShapes: [],
  };
}

/** The lines of one version, written "30 ml Dry gin". */
export function specLines(makes: string, from: string, lines: readonly string[]): SpecLine[] {
  return lines.map((text, index) => {
    const [amount = "", unit = "", ...item] = text.split(" ");
    const facts = { makes, from, line: index + 1, item: item.join(" "), orItems: [], note: "" };
    return unit === "top"
      ? { ...facts, amount: null, unit: "top" as const }
      : { ...facts, amount: Number(amount), unit: unit as Unit };
  });
}

/** A drink with only a name and a price in cents. */
export function aDrink(name: string, priceMinor: number | null = null): Book["drinks"][number] {
  return {
    name,
    priceMinor,
    glass: "",
    glassMl: null,
    ice: null,
    technique: null,
    garnishNote: "",
    method: "",
    allergens: [],
    onMenuFrom: null,
    onMenuUntil: null,
  };
}

export function aPrep(prep: string, from: string, yieldMl: number): Book["preps"][number] {
  return {
    prep,
    from,
    yield: yieldMl,
    unit: "ml",
    batchStep: null,
    vesselMax: null,
    activeMinutes: null,
    standingHours: null,
    shelfLifeDays: null,
    method: "",
  };
}

/** One sale at a moment, as the database hands it over on a day that a count divides. */
export function aSale(at: string, ringName: string, quantity = 1, modifiers = ""): SaleGroup {
  // The hand bar's clock is UTC and its day ends at 04:00.
  const businessDate = new Date(Date.parse(at) - 4 * 3_600_000).toISOString().slice(0, 10);
  return { businessDate, at, timed: true, ringName, modifiers, quantity, netMinor: 1000 * quantity };
}

/**
 * A bar small enough to reckon by hand: four drinks, three preps in each other, limes shared by juice
 * and wheels, a spec that changes on Wednesday 4 March 2026.
 *
 * - House sour: 50 ml gin, 25 ml lime juice, 20 ml ginger syrup, 1 lime wheel; from Wednesday 60 ml gin.
 * - Old hand: 60 ml rum, 5 ml rich syrup.
 * - Cooler: 40 ml gin, 30 ml cordial, 100 ml soda.
 * - Shot: 30 ml rum.
 * - Simple syrup (stocked): 500 g sugar + 500 ml water → 800 ml. Rich syrup (to order): 600 g sugar + 300 ml water → 700 ml.
 * - Ginger syrup (stocked): 400 ml simple syrup + 100 g ginger → 450 ml.
 * - Cordial (to order): 200 ml ginger syrup + 100 ml lime juice → 300 ml.
 * - A lime gives 25 ml juice (flesh) or 8 wheels (skin and flesh). Juice is squeezed to order.
 */
export function handBook(): Book {
  return {
    ...anEmptyBook(),
    items: [
      anItem({ name: "Gin", base: "ml", category: "spirit", abv: 40 }),
      anItem({ name: "Rum", base: "ml", category: "spirit", abv: 40, pour: "free" }),
      anItem({ name: "Sugar", base: "g" }),
      anItem({ name: "Water", base: "ml" }),
      anItem({ name: "Ginger", base: "g" }),
      anItem({ name: "Soda", base: "ml" }),
      anItem({ name: "Lime", base: "each" }),
      anItem({ name: "Lime juice", base: "ml", inHouse: true, stocked: false }),
      anItem({ name: "Lime wheel", base: "each", inHouse: true, stocked: false }),
      anItem({ name: "Simple syrup", base: "ml", inHouse: true }),
      anItem({ name: "Rich syrup", base: "ml", inHouse: true, stocked: false }),
      anItem({ name: "Ginger syrup", base: "ml", inHouse: true }),
      anItem({ name: "Cordial", base: "ml", inHouse: true, stocked: false }),
    ],
    drinks: [
      aDrink("House sour", 1200),
      aDrink("Old hand", 1300),
      aDrink("Cooler", 1100),
      aDrink("Shot", 600),
    ],
    preps: [
      aPrep("Simple syrup", "2026-01-01", 800),
      aPrep("Rich syrup", "2026-01-01", 700),
      aPrep("Ginger syrup", "2026-01-01", 450),
      aPrep("Cordial", "2026-01-01", 300),
    ],
    specs: [
      ...specLines("House sour", "2026-01-01", [
        "50 ml Gin",
        "25 ml Lime juice",
        "20 ml Ginger syrup",
        "1 each Lime wheel",
      ]),
      ...specLines("House sour", "2026-03-04", [
        "60 ml Gin",
        "25 ml Lime juice",
        "20 ml Ginger syrup",
        "1 each Lime wheel",
      ]),
      ...specLines("Old hand", "2026-01-01", ["60 ml Rum", "5 ml Rich syrup"]),
      ...specLines("Cooler", "2026-01-01", ["40 ml Gin", "30 ml Cordial", "100 ml Soda"]),
      ...specLines("Shot", "2026-01-01", ["30 ml Rum"]),
      ...specLines("Simple syrup", "2026-01-01", ["500 g Sugar", "500 ml Water"]),
      ...specLines("Rich syrup", "2026-01-01", ["600 g Sugar", "300 ml Water"]),
      ...specLines("Ginger syrup", "2026-01-01", ["400 ml Simple syrup", "100 g Ginger"]),
      ...specLines("Cordial", "2026-01-01", ["200 ml Ginger syrup", "100 ml Lime juice"]),
    ],
    cuts: [
      { source: "Lime", from: null, gives: "Lime juice", perPiece: 25, unit: "ml", parts: ["flesh"] },
      {
        source: "Lime",
        from: null,
        gives: "Lime wheel",
        perPiece: 8,
        unit: "each",
        parts: ["skin", "flesh"],
      },
    ],
    ringNames: [
      {
        ringName: "HSE SOUR",
        soldAs: { kind: "drink", drink: "House sour" },
        serves: 1,
        amount: null,
        unit: null,
      },
      { ringName: "Gift card", soldAs: { kind: "ignore" }, serves: 1, amount: null, unit: null },
    ],
    modifiers: [
      { modifier: "Double", effect: "times", item: null, with: null, amount: null, unit: null, factor: 2 },
      {
        modifier: "With rum",
        effect: "swap",
        item: "Gin",
        with: "Rum",
        amount: null,
        unit: null,
        factor: null,
      },
      { modifier: "No ice", effect: "none", item: null, with: null, amount: null, unit: null, factor: null },
    ],
    batches: [
      { at: "2026-03-03T14:00:00Z", prep: "Simple syrup", made: 1600, unit: "ml", by: "", note: "" },
      { at: "2026-03-03T15:00:00Z", prep: "Ginger syrup", made: 900, unit: "ml", by: "", note: "" },
    ],
  };
}
