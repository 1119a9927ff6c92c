import { groupBy } from "#engine/catalogue.ts";
import type { Facts } from "#engine/facts.ts";
import type { Cause } from "#engine/variance/causes/cause.ts";
import { twoSidedChance } from "#engine/variance/normal.ts";

/** A few items worth counting tonight, and how long that takes. Money in major units. */
export type SpotCount = {
  items: SpotItem[];
  minutes: number;
};

export type SpotItem = {
  item: string;
  areas: string[];
  /** Money that is unexplained. */
  money: number;
  /** How open the question is that a count would answer, 0 to 1. */
  doubt: number;
  why: string;
};

/** Common practice: half a minute for an item at each of its places, and a minute to get to a place. */
const MINUTES = { item: 0.5, area: 1 } as const;
const MOST_MINUTES = 15;
const MOST_ITEMS = 6;
/** Money × doubt below this (major units) is not worth the walk. */
const LEAST_WORTH = 1;
/** What counting again decides is worth counting however sure the numbers look. */
const DECIDED_BY_COUNTING: ReadonlySet<Cause["kind"]> = new Set(["container-miscounted", "area-skipped"]);
const RECOUNT_DOUBT = 0.5;

type Row = { item: string; unexplained: number; ratio: number; cost: number | null };

/**
 * Which few items to count on any night between two counts: those with the most money × doubt for the minutes they
 * take. A short count splits the week, and tells a leak that goes on from one event that is over.
 *
 * A bottle of 30 missing that may be broken (0.6), short or not seen → money 30, doubt 0.4: counted. A skipped area
 * is counted again even where it is all but certain.
 */
export function spotCount(
  facts: Pick<Facts, "book">,
  { items, causes }: { items: readonly Row[]; causes: readonly Cause[] },
): SpotCount {
  const places = groupBy(facts.book.areas, ({ item }) => item);
  const worth = items
    .flatMap(({ item, ratio, cost }): SpotItem[] => {
      if (cost === null) return [];
      const { doubt, why } = doubtOf(item, ratio, causes);
      const areas = [...new Set((places.get(item) ?? []).map(({ area }) => area))];
      return [{ item, areas, money: Math.abs(cost), doubt, why }];
    })
    .filter(({ money, doubt }) => money * doubt >= LEAST_WORTH);
  return pick(worth);
}

/** Takes what brings most for its minutes; an area that one stands in already costs no second walk. */
function pick(worth: readonly SpotItem[]): SpotCount {
  const taken: SpotItem[] = [];
  const visited = new Set<string>();
  let minutes = 0;
  let left = [...worth];
  while (taken.length < MOST_ITEMS && left.length > 0) {
    const cost = ({ areas }: SpotItem) => minutesOf(areas, visited);
    const gain = (entry: SpotItem) => (entry.money * entry.doubt) / cost(entry);
    const best = left.reduce((a, b) => (gain(b) > gain(a) ? b : a));
    left = left.filter((entry) => entry !== best);
    if (minutes + cost(best) > MOST_MINUTES) continue;
    minutes += cost(best);
    for (const area of best.areas) visited.add(area);
    taken.push(best);
  }
  return { items: taken, minutes: Math.ceil(minutes) };
}

function minutesOf(areas: readonly string[], visited: ReadonlySet<string>): number {
  const places = Math.max(1, areas.length);
  const walks = areas.filter((area) => !visited.has(area)).length;
  return places * MINUTES.item + walks * MINUTES.area;
}

/** Without a cause: how sure it is that this is no noise. With one: how unsure it is which. */
function doubtOf(item: string, ratio: number, causes: readonly Cause[]): { doubt: number; why: string } {
  const own = causes.filter(({ evidence }) => evidence.some((line) => line.item === item));
  const [best] = own;
  if (best === undefined) {
    const real = 1 - twoSidedChance(ratio);
    return { doubt: real >= LEAST_REAL ? real : 0, why: "Stands out, and no cause explains it." };
  }
  const open = 1 - best.probability;
  if (own.some(({ kind }) => DECIDED_BY_COUNTING.has(kind))) {
    return {
      doubt: Math.max(open, RECOUNT_DOUBT),
      why: "Counting it again tells a wrong count from stock that is gone.",
    };
  }
  return { doubt: open, why: "A short count tells what goes on from what is over." };
}

/** One in twenty clean items is beyond two standard uncertainties; a short count is for more than that. */
const LEAST_REAL = 0.95;
