import type { Venue } from "#engine/venue.ts";
import {
  formatAmount,
  formatMoney,
  formatNumber,
  formatWhen,
  inShownUnit,
  plural,
  shownUnit,
} from "../format.ts";
import { DataTable } from "../parts/DataTable.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";
import type { WhatIfAnswer } from "./plan-queries.ts";

type Drink = WhatIfAnswer["drinks"][number];
type Item = WhatIfAnswer["items"][number];
type Line = WhatIfAnswer["order"][number];
type Pair = { before: number; after: number };

/** What the changes would do: the money in words, then drinks, items and order lines that move. */
export function WhatIfResult({ answer: { totals, drinks, items, order } }: { answer: WhatIfAnswer }) {
  const venue = useVenue();
  const money = (value: number) => formatMoney(value, venue.currency, { whole: true });
  return (
    <>
      <dl className="what-if-totals">
        <Total name="Serves" pair={totals.serves} show={(value) => formatNumber(value)} />
        <Total name="Sales" pair={totals.sales} show={money} />
        <Total name="Cost of what is used" pair={totals.cost} show={money} />
        <Total name="Left over the drinks' cost" pair={totals.contribution} show={money} />
        <Total name="The next orders" pair={totals.order} show={money} />
      </dl>
      {order.length === 0 ? (
        <p>The next orders stay as they are: what changes lies beyond the days they have to last.</p>
      ) : (
        <DataTable
          caption="Order lines that change, in what they are bought in"
          columns={LINE_COLUMNS}
          rows={order}
          rowKey={({ item, pack }) => `${item} ${pack}`}
          fileName="what if orders"
          isPlain
        />
      )}
      <DataTable
        caption="Items of which more or less is used, the most money first"
        columns={itemColumns(venue)}
        rows={items}
        rowKey={({ item }) => item}
        fileName="what if items"
        empty={<p>Nothing else is used than before.</p>}
      />
      {drinks.length === 0 ? (
        <p>The guests are taken to choose as before.</p>
      ) : (
        <details>
          <summary>{plural(drinks.length, "drink")} of which more or fewer are sold</summary>
          <DataTable
            caption="Serves over these days"
            columns={DRINK_COLUMNS}
            rows={drinks}
            rowKey={({ what }) => what}
            fileName="what if drinks"
          />
        </details>
      )}
    </>
  );
}

function Total({ name, pair, show }: { name: string; pair: Pair; show: (value: number) => string }) {
  const more = pair.after - pair.before;
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        {show(pair.after)}{" "}
        <span className="soft">
          {Math.abs(more) < 0.005 ? "as before" : `${more > 0 ? "+" : "−"}${show(Math.abs(more))}`}
        </span>
      </dd>
    </div>
  );
}

const DRINK_COLUMNS: Column<Drink>[] = [
  { key: "what", head: "Drink", kind: "text", onPhone: "lead", value: ({ what }) => what },
  serves("before", "Serves now"),
  serves("after", "then"),
];

function serves(key: "before" | "after", head: string): Column<Drink> {
  return {
    key,
    head,
    kind: "number",
    onPhone: key === "after" ? "main" : "detail",
    value: (drink) => drink[key],
    show: (drink) => formatNumber(drink[key], 1),
  };
}

const LINE_COLUMNS: Column<Line>[] = [
  { key: "item", head: "Item", kind: "text", onPhone: "lead", value: ({ item }) => item },
  { key: "supplier", head: "Supplier", kind: "text", value: ({ supplier }) => supplier },
  { key: "pack", head: "Of", kind: "text", value: ({ of, pack }) => `${of} (${pack})` },
  { key: "before", head: "Now", kind: "number", value: ({ before }) => before },
  { key: "after", head: "Then", kind: "number", onPhone: "main", value: ({ after }) => after },
];

function itemColumns(venue: Venue): Column<Item>[] {
  const amount = (key: "before" | "after", head: string): Column<Item> => ({
    key,
    head,
    kind: "number",
    onPhone: key === "after" ? "main" : "detail",
    value: (item) => inShownUnit(item[key], item.base, venue),
    show: (item) => formatAmount(item[key], item.base, venue),
  });
  return [
    { key: "item", head: "Item", kind: "text", onPhone: "lead", value: ({ item }) => item },
    amount("before", "Use now"),
    amount("after", "then"),
    {
      key: "unit",
      head: "Unit",
      kind: "text",
      isFileOnly: true,
      value: ({ base }) => shownUnit(base, venue),
    },
    {
      key: "moneyMore",
      head: "More money",
      kind: "number",
      value: ({ moneyMore }) => moneyMore,
      show: ({ moneyMore }) => formatMoney(moneyMore, venue.currency),
    },
    {
      key: "orderBy",
      head: "Order by",
      kind: "text",
      value: ({ orderBy }) => orderBy,
      show: ({ orderBy, supplier }) => orderByWords(orderBy, supplier, venue),
    },
  ];
}

function orderByWords(orderBy: string | null, supplier: string | null, venue: Venue): string {
  if (orderBy === null) return supplier === null ? "" : `no delivery of ${supplier} in time`;
  return `${formatWhen(orderBy, venue)}, ${supplier ?? ""}`;
}
