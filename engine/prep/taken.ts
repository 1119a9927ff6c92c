import type { Demand } from "#engine/demand/distribution.ts";
import type { Making } from "#engine/prep/making.ts";
import type { BusinessDate } from "#engine/time.ts";

/** What the drinks are expected to take, as far as prep has to know it; in base units. */
export type DrinksDemand = {
  /** Of stocked items, over all days from one to another. */
  itemsOver: (days: { from: BusinessDate; to: BusinessDate }) => ReadonlyMap<string, Demand>;
  /** Of what is cut when it is asked for, on one day. */
  cutsOn: (date: BusinessDate) => ReadonlyMap<string, Demand>;
  /** What a base unit of a stocked item earns in the drinks of a day that need it, in major money units. */
  marginsOn?: (date: BusinessDate) => ReadonlyMap<string, number>;
};

/** A prep already planned, as far as what it is made of has to know. */
export type Planned = { making: Making; make: number; days: readonly BusinessDate[] };

/** What today's batches of other preps take of one. */
export function takenByBatches(prep: string, known: ReadonlyMap<string, Planned>): number {
  return [...known.values()].reduce((sum, user) => sum + user.make * shareOf(prep, user.making), 0);
}

/** What drinks take of a prep over all of some days that follow each other. */
export function directDemand(prep: string, days: readonly BusinessDate[], demand: DrinksDemand): Demand {
  const [from, to] = [days[0], days.at(-1)];
  if (from === undefined || to === undefined) return NONE;
  return demand.itemsOver({ from, to }).get(prep) ?? NONE;
}

/** What makings later than today's take of a prep: of preps whose own batch of today does not serve so long. */
export function laterDemand(
  prep: string,
  days: readonly BusinessDate[],
  known: ReadonlyMap<string, Planned>,
  demand: DrinksDemand,
): Demand {
  const asked = [...known.values()].map((user) => {
    const share = shareOf(prep, user.making);
    const later = share === 0 ? [] : days.filter((day) => day > (user.days.at(-1) ?? day));
    return scaled(grossDemand(user.making.prep, later, known, demand), share);
  });
  return sumDemand(asked);
}

/** All that is taken of a prep on some days, by drinks and by whatever is made of it, stock aside. */
function grossDemand(
  prep: string,
  days: readonly BusinessDate[],
  known: ReadonlyMap<string, Planned>,
  demand: DrinksDemand,
): Demand {
  if (days.length === 0) return NONE;
  const users = [...known.values()].filter(({ making }) => shareOf(prep, making) > 0);
  return sumDemand([
    directDemand(prep, days, demand),
    ...users.map(({ making }) =>
      scaled(grossDemand(making.prep, days, known, demand), shareOf(prep, making)),
    ),
  ]);
}

/** Base units of an input in one base unit made. */
function shareOf(input: string, { inputs }: Making): number {
  return inputs.find(({ item }) => item === input)?.perUnit ?? 0;
}

const NONE: Demand = { mean: 0, variance: 0 };

/** Of demands that do not move together. */
export function sumDemand(demands: readonly Demand[]): Demand {
  return demands.reduce(
    (sum, { mean, variance }) => ({ mean: sum.mean + mean, variance: sum.variance + variance }),
    NONE,
  );
}

function scaled({ mean, variance }: Demand, by: number): Demand {
  return { mean: mean * by, variance: variance * by * by };
}
