import type { DrinkCost } from "#engine/costing/report.ts";
import type { CatalogueAnswer } from "../answers.ts";
import { formatNumber } from "../format.ts";
import { formatMoney } from "../money.ts";
import { DataTable } from "../parts/DataTable.tsx";
import { Empty } from "../parts/Empty.tsx";
import type { Column } from "../parts/table-column.ts";
import { useMay } from "../people/signed-in.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { fromColumn, nameColumn } from "./spec-columns.tsx";
import { versionsOf } from "./versions.ts";

type DrinkRow = { name: string; price: number | null; from: string | null; versions: number } & Pick<
  DrinkCost,
  "cost" | "costPct" | "contribution"
>;

/** Columns for those who see what things cost. */
const COSTS = new Set(["costPct", "cost", "price", "contribution"]);

/** Drinks with what each costs, brings and leaves. */
export function DrinksTable({
  catalogue,
  costs = [],
}: {
  catalogue: CatalogueAnswer;
  costs: DrinkCost[] | undefined;
}) {
  const { currency } = useVenue();
  const seesCosts = useMay("seeCosts");
  const rows = catalogue.drinks.map(({ name }): DrinkRow => {
    const own = costs.find(({ drink }) => drink === name);
    const versions = versionsOf(catalogue.specs, name);
    return {
      name,
      price: own?.price ?? null,
      from: own?.from ?? versions[0]?.from ?? null,
      versions: versions.length,
      cost: own?.cost ?? null,
      costPct: own?.costPct ?? null,
      contribution: own?.contribution ?? null,
    };
  });
  const money = (key: "price" | "cost" | "contribution", head: string): Column<DrinkRow> => ({
    key,
    head,
    kind: "number",
    value: (row) => row[key],
    show: (row) =>
      row[key] === null ? (
        <span className="soft">{say("parts.notKnown")}</span>
      ) : (
        formatMoney(row[key], currency)
      ),
  });
  const columns: Column<DrinkRow>[] = [
    nameColumn(say("specs.drink")),
    {
      key: "costPct",
      head: say("specs.costOfPrice"),
      unit: "%",
      kind: "number",
      onPhone: "main",
      value: ({ costPct }) => costPct,
      show: ({ costPct }) => (costPct === null ? null : formatNumber(costPct, 1)),
    },
    money("cost", say("specs.cost")),
    money("price", say("specs.price")),
    money("contribution", say("specs.leaves")),
    fromColumn(),
  ];
  return (
    <section>
      <h2>{say("specs.drinks")}</h2>
      <DataTable
        caption={say(seesCosts ? "specs.drinksCosts" : "specs.drinksPlain")}
        columns={columns.filter(({ key }) => seesCosts || !COSTS.has(key))}
        rows={rows}
        rowKey={({ name }) => name}
        fileName="drinks"
        empty={
          <Empty title={say("specs.noDrinks")}>
            <p>{say("specs.noDrinksMore")}</p>
          </Empty>
        }
        initialSort={
          seesCosts ? { key: "costPct", isDescending: true } : { key: "name", isDescending: false }
        }
      />
    </section>
  );
}
