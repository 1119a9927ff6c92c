import "./specs.css";
import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { useState } from "react";
import type { DrinkCost } from "#engine/costing/report.ts";
import type { CatalogueAnswer } from "../answers.ts";
import { formatDate, formatMoney, formatNumber, plural } from "../format.ts";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { DataTable } from "../parts/DataTable.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import type { Column } from "../parts/table-column.ts";
import { catalogueQuery } from "../queries.ts";
import { useVenue } from "../shell/venue.tsx";
import { NewSpec } from "./NewSpec.tsx";
import { costQuery } from "./spec-queries.ts";
import { versionsOf } from "./versions.ts";

/** All drinks and preps: what they cost, what they bring, and from which day their spec holds. */
export function SpecsPage() {
  const { data: catalogue, error, refetch } = useQuery(catalogueQuery);
  const { data: cost } = useQuery(costQuery);
  const [isNew, setNew] = useState(false);
  return (
    <Page
      title="Specs"
      next={catalogue === undefined ? undefined : nextLine(catalogue)}
      actions={<Button onClick={() => setNew(!isNew)}>{isNew ? "Close" : "New drink or prep"}</Button>}
    >
      {isNew ? <NewSpec /> : null}
      {catalogue === undefined && error === null ? <Busy what="Opening the specs" /> : null}
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {catalogue === undefined ? null : (
        <>
          <Drinks catalogue={catalogue} costs={cost?.drinks} />
          <Preps
            catalogue={catalogue}
            costPerBase={new Map(cost?.items.map((row) => [row.item, row.costPerBase]))}
          />
        </>
      )}
    </Page>
  );
}

function nextLine({ drinks, specs }: CatalogueAnswer): string {
  const made = new Set(specs.map(({ makes }) => makes));
  const bare = drinks.filter(({ name }) => !made.has(name));
  if (bare.length > 0) return `${plural(bare.length, "drink")} without a spec: ${bare[0]?.name} first.`;
  return "Open one to read it, or to write it anew from a day on.";
}

type DrinkRow = { name: string; price: number | null; from: string | null; versions: number } & Pick<
  DrinkCost,
  "cost" | "costPct" | "contribution"
>;

function Drinks({ catalogue, costs = [] }: { catalogue: CatalogueAnswer; costs: DrinkCost[] | undefined }) {
  const { currency } = useVenue();
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
      row[key] === null ? <span className="soft">not known</span> : formatMoney(row[key], currency),
  });
  const columns: Column<DrinkRow>[] = [
    nameColumn("Drink"),
    {
      key: "costPct",
      head: "Cost of price",
      unit: "%",
      kind: "number",
      onPhone: "main",
      value: ({ costPct }) => costPct,
      show: ({ costPct }) => (costPct === null ? null : formatNumber(costPct, 1)),
    },
    money("cost", "Cost"),
    money("price", "Price"),
    money("contribution", "Leaves"),
    fromColumn(),
  ];
  return (
    <section>
      <h2>Drinks</h2>
      <DataTable
        caption="Cost by the spec in force and the prices paid; the price is the menu's, taxes as the book has them."
        columns={columns}
        rows={rows}
        rowKey={({ name }) => name}
        fileName="drinks"
        initialSort={{ key: "costPct", isDescending: true }}
      />
    </section>
  );
}

type PrepRow = {
  name: string;
  from: string | null;
  versions: number;
  yields: string;
  shelfLifeDays: number | null;
  costPerUnit: number | null;
};

function Preps({
  catalogue,
  costPerBase,
}: {
  catalogue: CatalogueAnswer;
  costPerBase: ReadonlyMap<string, number | null>;
}) {
  const { currency } = useVenue();
  const names = [...new Set(catalogue.preps.map(({ prep }) => prep))];
  const rows = names.map((name): PrepRow => {
    const newest = catalogue.preps
      .filter(({ prep }) => prep === name)
      .sort((a, b) => b.from.localeCompare(a.from))[0];
    const cost = costPerBase.get(name) ?? null;
    const base = catalogue.items.find((item) => item.name === name)?.base;
    return {
      name,
      from: versionsOf(catalogue.specs, name)[0]?.from ?? newest?.from ?? null,
      versions: versionsOf(catalogue.specs, name).length,
      yields: newest === undefined ? "" : `${formatNumber(newest.yield)} ${newest.unit}`,
      shelfLifeDays: newest?.shelfLifeDays ?? null,
      costPerUnit: cost === null ? null : cost * (base === "each" ? 1 : 1000),
    };
  });
  const columns: Column<PrepRow>[] = [
    nameColumn("Prep"),
    { key: "yields", head: "Yields", kind: "text", onPhone: "main", value: ({ yields }) => yields },
    {
      key: "keeps",
      head: "Keeps",
      unit: "days",
      kind: "number",
      value: ({ shelfLifeDays }) => shelfLifeDays,
    },
    {
      key: "cost",
      head: "Cost of a litre, kilogram or piece",
      kind: "number",
      value: ({ costPerUnit }) => costPerUnit,
      show: ({ costPerUnit }) =>
        costPerUnit === null ? <span className="soft">not known</span> : formatMoney(costPerUnit, currency),
    },
    fromColumn(),
  ];
  if (rows.length === 0) return null;
  return (
    <section>
      <h2>Preps</h2>
      <DataTable
        caption="Made in house."
        columns={columns}
        rows={rows}
        rowKey={({ name }) => name}
        fileName="preps"
        isPlain
      />
    </section>
  );
}

function nameColumn<Row extends { name: string }>(head: string): Column<Row> {
  return {
    key: "name",
    head,
    kind: "text",
    onPhone: "lead",
    value: ({ name }) => name,
    show: ({ name }) => (
      <Link to="/specs/$name" params={{ name }}>
        {name}
      </Link>
    ),
  };
}

function fromColumn<Row extends { from: string | null; versions: number }>(): Column<Row> {
  return {
    key: "from",
    head: "Spec from",
    kind: "text",
    value: ({ from }) => from,
    show: ({ from, versions }) => {
      if (from === null) return <span className="soft">no spec yet</span>;
      return versions > 1 ? `${formatDate(from)}, ${versions} versions` : formatDate(from);
    },
  };
}
