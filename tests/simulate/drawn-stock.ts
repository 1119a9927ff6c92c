import type { SimCut, SimItem, SimPour, SimPrep } from "./catalogue.ts";
import { Shelf } from "./drawn-shelf.ts";
import type { Random } from "./random.ts";
import type { BarStyle } from "./styles.ts";

/** What a drawn bar has on its shelves, with the names its drinks are drawn from. */
export type DrawnStock = {
  items: SimItem[];
  cuts: SimCut[];
  preps: SimPrep[];
  pours: SimPour[];
  spirits: string[];
  liqueurs: string[];
  bitters: string[];
  mixers: string[];
  juices: string[];
  syrups: string[];
  garnishes: string[];
  fruits: string[];
};

export function drawStock(style: BarStyle, random: Random): DrawnStock {
  const shelf = new Shelf(style, random);
  const spirits = named(style.spirits, "Spirit").map((name) => shelf.spirit(name));
  const liqueurs = named(style.liqueurs, "Liqueur").map((name) => shelf.liqueur(name));
  const bitters = named(style.bitters, "Bitters").map((name) => shelf.bitters(name));
  const mixers = named(style.mixers, "Mixer").map((name) => shelf.mixer(name));
  const fruits = named(style.fruits, "Fruit").map((name) => shelf.fruit(name));
  const juices = fruits.slice(0, Math.max(1, fruits.length - 1)).map((name) => shelf.juice(name));
  const garnishes = fruits.map((name) => shelf.garnish(name));
  const syrups = named(style.syrups, "Syrup").map((name, index) => shelf.syrup(name, index));
  const infusions = named(style.infusions, "Infusion").map((name) =>
    shelf.infusion(name, random.pick(spirits)),
  );
  for (const name of named(style.kegs, "Ale")) shelf.keg(name);
  for (const name of named(style.wines, "Wine")) shelf.wine(name);
  for (const name of named(style.bottledBeers, "Bottled beer")) shelf.bottledBeer(name);
  for (const name of spirits.filter(() => random.chance(0.3))) shelf.shot(name);
  return {
    items: shelf.items,
    cuts: shelf.cuts,
    preps: shelf.preps,
    pours: shelf.weighedPours(),
    spirits: [...spirits, ...infusions],
    liqueurs,
    bitters,
    mixers,
    juices,
    syrups,
    garnishes,
    fruits,
  };
}

const FIRST =
  "Ash Bay Cobalt Drift Elm Flint Garnet Hollow Iron Jade Knoll Linden Marsh Nettle Oak Pine Quarry Rook Slate Thorn Umber Vale Willow Yarrow".split(
    " ",
  );

/** "Ash Spirit", "Bay Spirit", … */
function named(count: number, kind: string): string[] {
  return Array.from({ length: count }, (_, index) => {
    const round = Math.floor(index / FIRST.length);
    return `${FIRST[index % FIRST.length]} ${kind}${round === 0 ? "" : ` ${round + 1}`}`;
  });
}
