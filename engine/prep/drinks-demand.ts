import type { Catalogue } from "#engine/catalogue.ts";
import { unitCosts } from "#engine/costing/unit-cost.ts";
import type { Demand } from "#engine/demand/distribution.ts";
import { itemDemandReader } from "#engine/demand/item-demand.ts";
import { fitDemand } from "#engine/demand/model.ts";
import { soldSeries } from "#engine/demand/series.ts";
import { serveUseReader } from "#engine/demand/serve-use.ts";
import type { Facts } from "#engine/facts.ts";
import { lostMargins } from "#engine/orders/lost-margin.ts";
import type { DrinksDemand } from "#engine/prep/taken.ts";
import { localToInstant } from "#engine/sales/read/clock.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { type BusinessDate, datesFrom } from "#engine/time.ts";

/** What the drinks are forecast to take, from the days before `asOf`: of stocked items, and of what is cut to order. */
export function forecastForPrep({
  facts,
  sales,
  asOf,
}: {
  facts: Facts;
  sales: readonly SaleGroup[];
  asOf: BusinessDate;
}): DrinksDemand {
  const model = fitDemand(facts, soldSeries(facts, sales, asOf), asOf);
  const readItems = itemDemandReader({ facts, sales, model, raw: false });
  const cutFacts = { ...facts, catalogue: withCutsKept(facts.catalogue) };
  const readCuts = itemDemandReader({ facts: cutFacts, sales, model, raw: false });
  const known = new Map<string, ReadonlyMap<string, Demand>>();
  return {
    itemsOver: ({ from, to }) => {
      const key = `${from} ${to}`;
      const demand =
        known.get(key) ?? readItems(datesFrom({ from, to }).map((date) => ({ date, share: 1 }))).total;
      known.set(key, demand);
      return demand;
    },
    cutsOn: (date) => {
      const { total } = readCuts([{ date, share: 1 }]);
      return new Map([...total].filter(([item]) => isCutToOrder(facts.catalogue, item)));
    },
    marginsOn: (date) =>
      lostMargins(facts, sales, {
        model,
        readUse: serveUseReader(facts.catalogue, sales, { asOf, raw: false }),
        costs: unitCosts(
          facts,
          localToInstant(`${date} ${facts.catalogue.venue.dayEnds}`, facts.catalogue.venue),
        ),
        dates: [date],
      }),
  };
}

/** A catalogue in which a wheel stays a wheel: what is cut to order is not opened up to its fruit. */
function withCutsKept(catalogue: Catalogue): Catalogue {
  const items = [...catalogue.items].map(([name, item]) => {
    return [name, isCutToOrder(catalogue, name) ? { ...item, stocked: true } : item] as const;
  });
  return { ...catalogue, items: new Map(items) };
}

function isCutToOrder(catalogue: Catalogue, name: string): boolean {
  return catalogue.cuts.has(name) && catalogue.items.get(name)?.stocked === false;
}
