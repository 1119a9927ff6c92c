import { unitFactor } from "#engine/measure/unit-factor.ts";
import { DEFAULT_HOUSE_ML, type Unit } from "#engine/measure/units.ts";

/** What a simulated bar stocks, makes and sells: the facts its book states and its staff live by. */
export type Catalogue = {
  venue: string;
  areas: string[];
  items: SimItem[];
  cuts: SimCut[];
  preps: SimPrep[];
  drinks: SimDrink[];
  /** Beer, wine and shots that the till sells as items. */
  pours: SimPour[];
  modifiers: SimModifier[];
  suppliers: SimSupplier[];
  events: { day: number; event: string; factor: number }[];
  plans: { day: number; drink: string; serves: number }[];
  closures: { supplier: string; fromDay: number; toDay: number }[];
  /** Drinks sold on an average day. */
  drinksPerDay: number;
  /** Rung by the till though nothing leaves the bar: a gift card. */
  ignored?: { ring: string; price: number; perWeek: number };
  /** A modifier the till knows and the book does not. */
  strayModifier?: string;
  /** Bottles lent to a sister bar and back. */
  transfers: { day: Day; direction: "in" | "out"; place: string; item: string; amount: number; unit: Unit }[];
  /** Weekdays on which the bar is counted, 0 is Monday; default Mondays alone, and Mondays always. */
  countOn?: number[];
  /** What is truly topped up for each ml that the glass is reckoned to have room for; default 1. */
  topUpHabit?: number;
  /** How often something is lost and written down. */
  losses: {
    spillsPerWeek: number;
    compsPerWeek: number;
    tastingsPerWeek: number;
    breakagesPerQuarter: number;
    produceWaste: string[];
  };
};

/** Days are counted from the first Monday of the simulation: 0 is the day of the opening count. */
export type Day = number;

export type CountMethod = "tenths" | "scale" | "pieces" | "measured";

export type SimItem = {
  name: string;
  category: string;
  base: "ml" | "g" | "each";
  abv?: number;
  brix?: number;
  /** Stated in the book. */
  densityGPerMl?: number;
  /** What the liquid really weighs, for the scale; from a published table where the book does not state it. */
  trueDensityGPerMl?: number;
  pieceG?: number;
  shelfLifeDays?: number;
  allergens?: string;
  inHouse?: boolean;
  stocked?: boolean;
  pour?: "jigger" | "free" | "measured";
  serviceLevel?: number;
  note?: string;
  packs: SimPack[];
  /** Where it stands: the open container in the first, the reserve in the last. Empty: never counted. */
  areas: string[];
  /** Full containers kept in the first area. */
  fullInFirst?: number;
  /** Two containers are open at once (two wells). */
  twoOpen?: boolean;
  method: CountMethod;
  /** Days of use kept beyond the next delivery but one. */
  safetyDays?: number;
};

export type SimPack = {
  pack: string;
  amount: number;
  unit: Unit;
  perCase: number;
  supplier: string;
  code: string;
  /** Of one `pricePer`, major units. */
  price: number;
  pricePer: "container" | "case";
  split: boolean;
  emptyG?: number;
  fullG?: number;
  /** A later price, from a day on. */
  laterPrice?: { fromDay: Day; price: number };
};

export type SimLine = { amount: number | null; unit: Unit | "top"; item: string; orItems: string[] };
export type SimVersion = { fromDay: Day; lines: SimLine[] };

export type SimPrep = {
  name: string;
  yieldMl: number;
  /** Batches are whole multiples of this. */
  stepMl: number;
  vesselMaxMl: number;
  activeMinutes: number;
  standingHours: number;
  shelfLifeDays: number;
  /** Days a batch is made for. */
  coverDays: number;
  method: string;
  /** Empty: the prep is given by a cut. */
  versions: SimVersion[];
  /** Whether preps.csv has a row; a juice that a cut gives needs none. */
  inSheet: boolean;
};

export type SimCut = {
  source: string;
  fromDay?: Day;
  gives: string;
  perPiece: number;
  unit: Unit;
  parts: string[];
};

export type SimDrink = {
  name: string;
  price: number;
  glass: string;
  glassMl: number;
  ice: "none" | "cubed" | "crushed" | "large";
  technique: "built" | "shaken" | "stirred" | "blended" | "thrown";
  method?: string;
  garnishNote?: string;
  allergens?: string;
  /** Share of the menu's sales. */
  weight: number;
  versions: SimVersion[];
  onMenuFromDay?: Day;
  onMenuUntilDay?: Day;
  /** Till names and how often each is used; default: the drink's own name. */
  rings?: { name: string; share: number; serves?: number }[];
  /** Till modifiers guests ask for, with the chance of each. */
  asks?: { modifier: string; chance: number }[];
};

export type SimPour = {
  ring: string;
  item: string;
  amount?: number;
  unit?: Unit;
  price: number;
  weight: number;
};

export type SimModifier = {
  modifier: string;
  effect: "swap" | "add" | "remove" | "times" | "none";
  item?: string;
  with?: string;
  amount?: number;
  unit?: Unit;
  factor?: number;
  /** What the till adds to the price; of several rows of a modifier one states it. */
  charge?: number;
};

export type SimSupplier = {
  supplier: string;
  email: string;
  minimumValue?: number;
  minimumCases?: number;
  /** Weekdays: 0 is Monday. */
  days: { orderDay: number; orderBy: string; deliveryDay: number; deliveryAt: string }[];
  invoicePrefix: string;
};

const MEASURES = { oz: "us", houseMl: DEFAULT_HOUSE_ML } as const;

/** An amount in the base unit of its dimension. 1.5 oz → 44.36 ml; 1 kg → 1000 g. */
export function inBase(amount: number, unit: Unit): number {
  return amount * unitFactor(unit, MEASURES).factor;
}

/**
 * Spec lines from a compact text: "2 oz Dry Gin; 0.75 oz Lime Juice; top Soda; 2 oz Bourbon | Rye".
 *
 * `|` names alternatives of an either-of line. Throws on a line it cannot read.
 */
export function lines(text: string): SimLine[] {
  return text.split(";").map((part) => {
    const found = /^(?:top|([\d.]+) (\S+)) (.+)$/.exec(part.trim());
    if (found === null) throw new Error(`cannot read the spec line "${part}"`);
    const [item = "", ...orItems] = (found[3] ?? "").split("|").map((name) => name.trim());
    if (found[1] === undefined) return { amount: null, unit: "top", item, orItems };
    return { amount: Number(found[1]), unit: found[2] as Unit, item, orItems };
  });
}

/** One version that holds from before the first day. */
export function always(text: string): SimVersion[] {
  return [{ fromDay: -90, lines: lines(text) }];
}

/** The version in force on a day; undefined before the first. */
export function versionOn(versions: readonly SimVersion[], day: Day): SimVersion | undefined {
  return versions.filter(({ fromDay }) => fromDay <= day).at(-1);
}

export function cutOf(catalogue: Catalogue, gives: string, day: Day): SimCut | undefined {
  return catalogue.cuts.filter((cut) => cut.gives === gives && (cut.fromDay ?? -90) <= day).at(-1);
}
