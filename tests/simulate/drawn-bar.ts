import { type Catalogue, inBase, lines, type SimDrink, type SimLine } from "./catalogue.ts";
import { type DrawnStock, drawStock } from "./drawn-stock.ts";
import { type Random, randomStream } from "./random.ts";
import type { BarStyle } from "./styles.ts";

/**
 * A bar that nobody thought out: how many of what it has is its style's, all else is drawn by the seed.
 *
 * Names, packs, prices, specs, cuts, favourites and ways of counting differ from seed to seed, so that what holds over many of
 * them was not made for one. The same style and seed give the same bar.
 */
export function drawnBar({ style, seed }: { style: BarStyle; seed: number }): Catalogue {
  const random = randomStream(seed, `bar ${style.name}`);
  const stock = drawStock(style, random);
  const drinks = drawDrinks(style, stock, random);
  return {
    venue: style.name,
    areas: style.areas,
    items: stock.items,
    cuts: stock.cuts,
    preps: stock.preps,
    drinks,
    pours: stock.pours,
    modifiers: [
      { modifier: "Tall", effect: "none" },
      ...stock.spirits.slice(0, 2).map((item) => ({
        modifier: "Double",
        effect: "times" as const,
        item,
        factor: 2,
      })),
    ],
    suppliers: style.suppliers,
    events: [],
    plans: [],
    closures: [],
    drinksPerDay: Math.round(style.drinksPerDay * (0.7 + 0.6 * random.uniform())),
    transfers: [],
    losses: {
      spillsPerWeek: 2,
      compsPerWeek: 2,
      tastingsPerWeek: 1,
      breakagesPerQuarter: 1,
      produceWaste: stock.fruits.slice(0, 2),
    },
    ...(style.countOn === undefined ? {} : { countOn: style.countOn }),
    topUpHabit: 0.8 + 0.45 * random.uniform(),
  };
}

const NAMES =
  "Amber Birch Copper Dusk Ember Fern Gable Heron Inlet Juniper Kestrel Larch Meadow North Otter Poplar".split(
    " ",
  );
const KINDS = "Sling Fix Smash Punch Flip Cup Toddy Rickey Buck Daisy Mule Crusta Swizzle Cooler".split(" ");

function drawDrinks(style: BarStyle, stock: DrawnStock, random: Random): SimDrink[] {
  return Array.from({ length: style.drinks }, (_, index): SimDrink => {
    const template = random.pickWeighted(TEMPLATES, ({ name }) => style.templates[name] ?? 0);
    const text = template.lines(stock, random, style);
    const isChanged = random.chance(0.15);
    return {
      name: `${NAMES[index % NAMES.length]} ${KINDS[Math.floor(index / 3) % KINDS.length]} ${index + 1}`,
      price: 9 + random.whole(0, 6),
      ...template.glass,
      weight: random.gamma(2),
      versions: isChanged
        ? [
            { fromDay: -90, lines: older(lines(text), random) },
            { fromDay: -10, lines: lines(text) },
          ]
        : [{ fromDay: -90, lines: lines(text) }],
      asks: random.chance(0.2) ? [{ modifier: "Tall", chance: 0.1 }] : [],
    };
  });
}

/** The spec before: a third more or less of its first and last lines. */
function older(now: SimLine[], random: Random): SimLine[] {
  return now.map((line, index) =>
    line.amount === null || (index > 0 && index < now.length - 1)
      ? line
      : { ...line, amount: Number((line.amount * (random.chance(0.5) ? 1.33 : 0.7)).toFixed(2)) },
  );
}

type Template = {
  name: keyof BarStyle["templates"];
  glass: Pick<SimDrink, "glass" | "glassMl" | "ice" | "technique">;
  lines: (stock: DrawnStock, random: Random, style: BarStyle) => string;
};

const COUPE = { glass: "coupe", glassMl: 160, ice: "none", technique: "shaken" } as const;
const ROCKS = { glass: "rocks", glassMl: 300, ice: "large", technique: "stirred" } as const;
const TALL = { glass: "highball", glassMl: 360, ice: "cubed", technique: "built" } as const;
const MUG = { glass: "mug", glassMl: 480, ice: "crushed", technique: "shaken" } as const;

/** "45 ml" or the like, as this bar writes it. */
function of(ml: number, style: BarStyle): string {
  if (style.writes === "oz") return `${Math.max(0.25, Math.round((ml / inBase(1, "oz")) * 4) / 4)} oz`;
  return style.writes === "cl" ? `${ml / 10} cl` : `${ml} ml`;
}

/** A spirit, sometimes with one of its kind that would do as well. */
function spirit({ spirits }: DrawnStock, random: Random): string {
  const [one, other] = [random.pick(spirits), random.pick(spirits)];
  return one !== other && random.chance(0.2) ? `${one} | ${other}` : one;
}

function some<T>(list: readonly T[], line: (one: T) => string, random: Random, chance = 1): string[] {
  return list.length === 0 || !random.chance(chance) ? [] : [line(random.pick(list))];
}

/** Lines of one item are one line. */
function joined(written: string[]): string {
  const seen = new Set<string>();
  return written
    .filter((line) => {
      const item = line.replace(/^(top|\S+ \S+) /, "").split(" | ")[0] ?? "";
      return seen.has(item) ? false : seen.add(item);
    })
    .join("; ");
}

const TEMPLATES: Template[] = [
  {
    name: "sour",
    glass: COUPE,
    lines: (stock, random, style) =>
      joined([
        `${of(random.pick([45, 50, 60]), style)} ${spirit(stock, random)}`,
        ...some(stock.juices, (name) => `${of(random.pick([20, 25, 30]), style)} ${name}`, random),
        ...some(stock.syrups, (name) => `${of(random.pick([15, 20]), style)} ${name}`, random),
        ...some(stock.bitters, (name) => `${random.whole(1, 3)} dash ${name}`, random, 0.3),
        ...some(stock.garnishes, (name) => `1 each ${name}`, random, 0.6),
      ]),
  },
  {
    name: "stirred",
    glass: ROCKS,
    lines: (stock, random, style) =>
      joined([
        `${of(random.pick([30, 45, 60]), style)} ${spirit(stock, random)}`,
        ...some(stock.liqueurs, (name) => `${of(random.pick([15, 25, 30]), style)} ${name}`, random),
        ...some(stock.liqueurs, (name) => `${of(random.pick([10, 30]), style)} ${name}`, random, 0.5),
        ...some(stock.syrups, (name) => `1 barspoon ${name}`, random, 0.3),
        ...some(stock.bitters, (name) => `2 dash ${name}`, random, 0.7),
        ...some(stock.garnishes, (name) => `1 each ${name}`, random, 0.6),
      ]),
  },
  {
    name: "long",
    glass: TALL,
    lines: (stock, random, style) =>
      joined([
        `${of(random.pick([40, 50, 60]), style)} ${spirit(stock, random)}`,
        ...some(stock.juices, (name) => `${of(15, style)} ${name}`, random, 0.4),
        ...some(stock.mixers, (name) => `top ${name}`, random),
        ...some(stock.garnishes, (name) => `1 each ${name}`, random, 0.5),
      ]),
  },
  {
    name: "tiki",
    glass: MUG,
    lines: (stock, random, style) =>
      joined([
        `${of(random.pick([30, 45]), style)} ${spirit(stock, random)}`,
        `${of(random.pick([15, 30]), style)} ${random.pick(stock.spirits)}`,
        ...some(stock.juices, (name) => `${of(random.pick([20, 30]), style)} ${name}`, random),
        ...some(stock.juices, (name) => `${of(random.pick([15, 30]), style)} ${name}`, random),
        ...some(stock.syrups, (name) => `${of(random.pick([10, 15]), style)} ${name}`, random),
        ...some(stock.syrups, (name) => `${of(random.pick([7.5, 10]), style)} ${name}`, random),
        ...some(stock.liqueurs, (name) => `1 barspoon ${name}`, random, 0.3),
        ...some(stock.bitters, (name) => `${random.whole(1, 4)} dash ${name}`, random, 0.6),
        ...some(stock.garnishes, (name) => `1 each ${name}`, random, 0.7),
      ]),
  },
];
