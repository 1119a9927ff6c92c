import type { Venue } from "#engine/venue.ts";
import { formatAmount, formatNumber, formatWhen, inShownUnit, shownUnit } from "../format.ts";
import { formatMoney } from "../money.ts";
import { DataTable } from "../parts/DataTable.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
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
        <Total name={say("plan.serves")} pair={totals.serves} show={(value) => formatNumber(value)} />
        <Total name={say("plan.sales")} pair={totals.sales} show={money} />
        <Total name={say("plan.costUsed")} pair={totals.cost} show={money} />
        <Total name={say("plan.left")} pair={totals.contribution} show={money} />
        <Total name={say("plan.nextOrders")} pair={totals.order} show={money} />
      </dl>
      {order.length === 0 ? (
        <p>{say("plan.ordersStay")}</p>
      ) : (
        <DataTable
          caption={say("plan.linesCaption")}
          columns={lineColumns()}
          rows={order}
          rowKey={({ item, pack }) => `${item} ${pack}`}
          fileName="what if orders"
          isPlain
        />
      )}
      <DataTable
        caption={say("plan.itemsCaption")}
        columns={itemColumns(venue)}
        rows={items}
        rowKey={({ item }) => item}
        fileName="what if items"
        empty={<p>{say("plan.nothingElse")}</p>}
      />
      {drinks.length === 0 ? (
        <p>{say("plan.choiceAsBefore")}</p>
      ) : (
        <details>
          <summary>{say("plan.drinksMoved", { count: drinks.length })}</summary>
          <DataTable
            caption={say("plan.servesCaption")}
            columns={drinkColumns()}
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
          {Math.abs(more) < 0.005 ? say("plan.asBefore") : `${more > 0 ? "+" : "−"}${show(Math.abs(more))}`}
        </span>
      </dd>
    </div>
  );
}

function drinkColumns(): Column<Drink>[] {
  return [
    { key: "what", head: say("plan.drink"), kind: "text", onPhone: "lead", value: ({ what }) => what },
    serves("before", say("plan.servesNow")),
    serves("after", say("plan.then")),
  ];
}

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

function lineColumns(): Column<Line>[] {
  return [
    { key: "item", head: say("plan.item"), kind: "text", onPhone: "lead", value: ({ item }) => item },
    { key: "supplier", head: say("plan.supplier"), kind: "text", value: ({ supplier }) => supplier },
    {
      key: "pack",
      head: say("plan.of"),
      kind: "text",
      value: ({ of, pack }) => say("plan.ofPack", { of, pack }),
    },
    { key: "before", head: say("plan.lineNow"), kind: "number", value: ({ before }) => before },
    {
      key: "after",
      head: say("plan.lineThen"),
      kind: "number",
      onPhone: "main",
      value: ({ after }) => after,
    },
  ];
}

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
    { key: "item", head: say("plan.item"), kind: "text", onPhone: "lead", value: ({ item }) => item },
    amount("before", say("plan.useNow")),
    amount("after", say("plan.then")),
    {
      key: "unit",
      head: say("plan.unit"),
      kind: "text",
      isFileOnly: true,
      value: ({ base }) => shownUnit(base, venue),
    },
    {
      key: "moneyMore",
      head: say("plan.moreMoney"),
      kind: "number",
      value: ({ moneyMore }) => moneyMore,
      show: ({ moneyMore }) => formatMoney(moneyMore, venue.currency),
    },
    {
      key: "orderBy",
      head: say("plan.orderBy"),
      kind: "text",
      value: ({ orderBy }) => orderBy,
      show: ({ orderBy, supplier }) => orderByWords(orderBy, supplier, venue),
    },
  ];
}

function orderByWords(orderBy: string | null, supplier: string | null, venue: Venue): string {
  if (orderBy === null) return supplier === null ? "" : say("plan.noDelivery", { supplier });
  return `${formatWhen(orderBy, venue)}, ${supplier ?? ""}`;
}
