import { always, type SimDrink, type SimVersion } from "../catalogue.ts";

type Facts = Omit<SimDrink, "name" | "price" | "versions">;

export const COUPE = { glass: "coupe", glassMl: 165, ice: "none", technique: "shaken" } as const;
export const ROCKS = { glass: "rocks", glassMl: 300, ice: "cubed", technique: "shaken" } as const;
export const LARGE = { glass: "rocks", glassMl: 300, ice: "large", technique: "stirred" } as const;
export const UP = { glass: "nick and nora", glassMl: 150, ice: "none", technique: "stirred" } as const;
export const TALL = { glass: "highball", glassMl: 350, ice: "cubed", technique: "built" } as const;
export const FIZZ = { glass: "collins", glassMl: 350, ice: "cubed", technique: "shaken" } as const;
export const WINE = { glass: "wine", glassMl: 480, ice: "cubed", technique: "built" } as const;
export const CRUSHED = { glass: "tiki mug", glassMl: 400, ice: "crushed", technique: "shaken" } as const;

/** A drink with one spec from the start, or with the versions given. */
export function drink(name: string, price: number, spec: string | SimVersion[], facts: Facts): SimDrink {
  return { name, price, versions: typeof spec === "string" ? always(spec) : spec, ...facts };
}

export const NO_ICE = { modifier: "No Ice", chance: 0.05 };
export const NO_STRAW = { modifier: "No Straw", chance: 0.06 };
export const EXTRA_LIME = { modifier: "Extra Lime", chance: 0.08 };
export const DOUBLE = { modifier: "Double", chance: 0.12 };
export const SUB_SMOKED = { modifier: "Sub Smoked Agave", chance: 0.12 };
export const SPICY = { modifier: "Spicy", chance: 0.1 };
export const NO_EGG = { modifier: "No Egg", chance: 0.07 };
export const SUB_RYE = { modifier: "Sub Rye", chance: 0.15 };
