import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import type { BaseUnit } from "#engine/measure/units.ts";
import type { Venue } from "#engine/venue.ts";
import type { OpenOrder } from "../answers.ts";
import { formatAmount, formatDate, inShownUnit, shownUnit } from "../format.ts";
import { DataTable } from "../parts/DataTable.tsx";
import type { Column } from "../parts/table-column.ts";
import { catalogueQuery, openOrdersQuery } from "../queries.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";

/** Orders on the way; each line stays until deliveries reach it, or two weeks past its day. */
export function OpenOrders() {
  const venue = useVenue();
  const { data: orders = [] } = useQuery(openOrdersQuery);
  const { data: catalogue } = useQuery(catalogueQuery);
  if (orders.length === 0 || catalogue === undefined) return null;
  const bases = new Map(catalogue.items.map(({ name, base }) => [name, base]));
  return (
    <section className="no-print">
      <h2>{say("order.onTheWay")}</h2>
      <DataTable
        caption={say("order.onTheWayCaption")}
        columns={openColumns(venue, (item) => bases.get(item) ?? "each")}
        rows={orders}
        rowKey={({ order, item, expected }) => `${order} ${item} ${expected}`}
        fileName="open orders"
        initialSort={{ key: "expected", isDescending: false }}
        isPlain={orders.length < 8}
      />
    </section>
  );
}

function openColumns(venue: Venue, baseOf: (item: string) => BaseUnit): Column<OpenOrder>[] {
  return [
    { key: "item", head: say("stock.item"), kind: "text", onPhone: "lead", value: ({ item }) => item },
    { key: "supplier", head: say("order.supplier"), kind: "text", value: ({ supplier }) => supplier },
    {
      key: "order",
      head: say("order.order"),
      kind: "text",
      value: ({ order }) => order,
      show: ({ order }) => (
        <Link to="/order/check/$order" params={{ order }}>
          {order}
        </Link>
      ),
    },
    {
      key: "expected",
      head: say("order.expected"),
      kind: "text",
      value: ({ expected }) => expected,
      show: ({ expected }) => formatDate(expected),
    },
    {
      key: "open",
      head: say("order.stillToCome"),
      kind: "number",
      onPhone: "main",
      value: ({ item, quantity }) => inShownUnit(quantity, baseOf(item), venue),
      show: ({ item, quantity }) => formatAmount(quantity, baseOf(item), venue),
    },
    {
      key: "unit",
      head: say("stock.unit"),
      kind: "text",
      isFileOnly: true,
      value: ({ item }) => shownUnit(baseOf(item), venue),
    },
  ];
}
