import { always, type SimCut, type SimItem, type SimPack, type SimPour, type SimPrep } from "./catalogue.ts";
import type { Random } from "./random.ts";
import type { BarStyle } from "./styles.ts";

/** Density of plain spirit of 40 % vol at 20 °C, from the printed alcohol tables (OIML R 22). */
const SPIRIT_DENSITY = 0.94805;

/** The items, cuts, preps and pours of a drawn bar, as they are put on its shelf one by one. */
export class Shelf {
  readonly items: SimItem[] = [
    { name: "Water", category: "water", base: "ml", packs: [], areas: [], method: "measured" },
  ];
  readonly cuts: SimCut[] = [];
  readonly preps: SimPrep[] = [];
  readonly #pours: SimPour[] = [];
  readonly #style: BarStyle;
  readonly #random: Random;

  constructor(style: BarStyle, random: Random) {
    this.#style = style;
    this.#random = random;
  }

  spirit(name: string): string {
    const pour = this.#random.chance(this.#style.freeShare) ? "free" : "jigger";
    return this.#bottle(
      name,
      { category: "spirit", abv: 40, pour },
      SPIRIT_DENSITY,
      this.#random.whole(14, 34),
    );
  }

  liqueur(name: string): string {
    const density = 0.98 + 0.12 * this.#random.uniform();
    const facts = { category: "liqueur", abv: 24, densityGPerMl: Number(density.toFixed(3)) };
    return this.#bottle(name, facts, facts.densityGPerMl, this.#random.whole(10, 26));
  }

  bitters(name: string): string {
    this.#add(name, {
      category: "bitters",
      abv: 44,
      pour: "measured",
      packs: [this.#pack("200 ml", 200, "ml", 11)],
    });
    return name;
  }

  mixer(name: string): string {
    const pack = { ...this.#pack("1 L", 1000, "ml", 1.8), perCase: 12, split: false };
    this.#add(name, { category: "mixer", packs: [pack], fullInFirst: 4 });
    return name;
  }

  keg(name: string): void {
    const litres = this.#random.pick([30, 50]);
    const pack = { ...this.#pack(`${litres} L keg`, litres, "l", litres * 2.6), perCase: 1, emptyG: 12_000 };
    const facts = { category: "beer", pour: "free" as const, densityGPerMl: 1.008, trueDensityGPerMl: 1.008 };
    this.#add(name, {
      ...facts,
      packs: [pack],
      method: this.#random.chance(0.5) ? "scale" : "tenths",
      areas: [this.#last],
    });
    this.#pours.push({
      ring: `Pint ${name}`,
      item: name,
      amount: 568,
      unit: "ml",
      price: 6,
      weight: this.#random.gamma(3) * 4,
    });
  }

  wine(name: string): void {
    const pack = { ...this.#pack("750 ml", 750, "ml", this.#random.whole(8, 16)), perCase: 6 };
    this.#add(name, {
      category: "wine",
      pour: this.#random.chance(0.5) ? "free" : "jigger",
      packs: [pack],
      fullInFirst: 2,
    });
    this.#pours.push({
      ring: `Glass ${name}`,
      item: name,
      amount: 175,
      unit: "ml",
      price: 8,
      weight: this.#random.gamma(3),
    });
  }

  bottledBeer(name: string): void {
    const pack = {
      ...this.#pack("bottle", 1, "each", 32),
      perCase: 24,
      pricePer: "case" as const,
      split: false,
    };
    this.#add(name, {
      category: "beer",
      base: "each",
      pour: "measured",
      packs: [pack],
      method: "pieces",
      fullInFirst: 20,
    });
    this.#pours.push({ ring: name, item: name, price: 5, weight: this.#random.gamma(3) });
  }

  shot(name: string): void {
    const ring = `Shot ${name}`;
    this.#pours.push({
      ring,
      item: name,
      amount: 40,
      unit: "ml",
      price: 7,
      weight: this.#random.gamma(2) * 0.5,
    });
  }

  fruit(name: string): string {
    const box = { ...this.#pack("box", this.#random.pick([20, 36, 50]), "each", 14), supplier: this.#greens };
    this.#add(name, {
      category: "produce",
      base: "each",
      packs: [box],
      method: "pieces",
      areas: [this.#last],
      safetyDays: 4,
    });
    return name;
  }

  juice(fruit: string): string {
    const gives = `${fruit} juice`;
    this.#made(gives, { category: "juice", shelfLifeDays: 2 });
    this.cuts.push({
      source: fruit,
      gives,
      perPiece: this.#random.whole(22, 90),
      unit: "ml",
      parts: ["flesh"],
    });
    this.#prep(gives, {
      yieldMl: 1000,
      stepMl: 100,
      shelfLifeDays: 2,
      coverDays: 1,
      standingHours: 0,
      versions: [],
    });
    return gives;
  }

  garnish(fruit: string): string {
    const gives = `${fruit} ${this.#random.pick(["wheel", "peel"])}`;
    const parts = gives.endsWith("peel") ? ["skin"] : ["skin", "flesh"];
    this.items.push({
      name: gives,
      category: "garnish",
      base: "each",
      packs: [],
      areas: [],
      stocked: false,
      method: "pieces",
      inHouse: true,
    });
    this.cuts.push({ source: fruit, gives, perPiece: this.#random.whole(6, 12), unit: "each", parts });
    return gives;
  }

  /** Half of them of plain sugar, the others with something of their own in them. */
  syrup(name: string, index: number): string {
    const sugar = `Sugar ${(index % 3) + 1}`;
    if (!this.items.some((item) => item.name === sugar)) this.#dry(sugar, "5 kg sack", 5, "kg", 9);
    const flavour = `Flavour ${index + 1}`;
    if (index % 2 === 1) this.#dry(flavour, "500 g tub", 500, "g", 8);
    const grams = this.#random.pick([500, 700, 1000]);
    const own = index % 2 === 0 ? "" : `; ${this.#random.pick(["2 oz-wt", "60 g", "90 g"])} ${flavour}`;
    const spec = `${grams} g ${sugar}; 500 ml Water${own}`;
    this.#made(name, { category: "syrup" });
    this.#prep(name, {
      yieldMl: 1000,
      stepMl: 500,
      shelfLifeDays: 21,
      coverDays: 4,
      standingHours: 1,
      versions: always(spec),
    });
    return name;
  }

  infusion(name: string, spirit: string): string {
    this.#made(name, { category: "infusion", abv: 38 });
    this.#prep(name, {
      yieldMl: 980,
      stepMl: 980,
      shelfLifeDays: 30,
      coverDays: 5,
      standingHours: 4,
      versions: always(`1 l ${spirit}`),
    });
    return name;
  }

  /** Beer, wine and shots, so heavy that they make up the style's share of sales beside drinks of weight 1 each. */
  weighedPours(): SimPour[] {
    const sum = this.#pours.reduce((total, { weight }) => total + weight, 0);
    const wanted = (this.#style.drinks * this.#style.pourShare) / (1 - this.#style.pourShare);
    return this.#pours.map((pour) => ({ ...pour, weight: (pour.weight * wanted) / sum }));
  }

  get #last(): string {
    return this.#style.areas.at(-1) ?? "";
  }

  get #greens(): string {
    return this.#style.suppliers.at(-1)?.supplier ?? "";
  }

  #bottle(name: string, facts: Partial<SimItem>, density: number, price: number): string {
    const ml = this.#style.bottleMl;
    const isWeighed = this.#style.bottles === "scale";
    const pack = {
      ...this.#pack(`${ml} ml`, ml, "ml", price),
      perCase: this.#random.pick([6, 12]),
      ...(isWeighed ? { emptyG: this.#random.whole(380, 620) } : {}),
    };
    const other = {
      ...pack,
      pack: `${ml === 1000 ? 700 : 1000} ml`,
      amount: ml === 1000 ? 700 : 1000,
      price: price * 1.3,
    };
    this.#add(name, {
      ...facts,
      packs: this.#random.chance(0.3) ? [pack, other] : [pack],
      method: this.#style.bottles,
      trueDensityGPerMl: density,
      fullInFirst: this.#random.whole(0, 2),
      ...(this.#random.chance(0.08) ? { twoOpen: true } : {}),
    });
    return name;
  }

  #dry(name: string, form: string, amount: number, unit: SimPack["unit"], price: number): void {
    const pack = { ...this.#pack(form, amount, unit, price), supplier: this.#greens };
    this.#add(name, {
      category: "dry goods",
      base: "g",
      packs: [pack],
      areas: [this.#last],
      method: "measured",
      safetyDays: 8,
    });
  }

  #pack(pack: string, amount: number, unit: SimPack["unit"], price: number): SimPack {
    const supplier = this.#style.suppliers[0]?.supplier ?? "";
    return { pack, amount, unit, perCase: 1, supplier, code: "", price, pricePer: "container", split: true };
  }

  #add(name: string, facts: Partial<SimItem> & { packs: SimPack[] }): void {
    const [first = "", second = first] = this.#style.areas;
    this.items.push({
      name,
      category: "spirit",
      base: "ml",
      areas: [first, second],
      method: "tenths",
      ...facts,
    });
  }

  #made(name: string, facts: Partial<SimItem>): void {
    this.items.push({
      name,
      category: "syrup",
      base: "ml",
      packs: [],
      areas: [this.#last],
      method: "measured",
      inHouse: true,
      ...facts,
    });
  }

  #prep(
    name: string,
    facts: Pick<SimPrep, "yieldMl" | "stepMl" | "shelfLifeDays" | "coverDays" | "standingHours" | "versions">,
  ): void {
    this.preps.push({
      name,
      vesselMaxMl: 8 * facts.stepMl,
      activeMinutes: 15,
      method: "Make, strain, date.",
      inSheet: true,
      ...facts,
    });
  }
}
