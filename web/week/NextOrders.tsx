import { Link } from "@tanstack/react-router";
import type { NextOrder } from "../answers.ts";
import { formatWhen, plural } from "../format.ts";
import { Empty } from "../parts/Empty.tsx";
import { Money } from "../parts/Money.tsx";
import { useMay } from "../people/signed-in.ts";
import { useVenue } from "../shell/venue.tsx";

/** The orders that come up, by their cut-off. */
export function NextOrders({ orders }: { orders: readonly NextOrder[] }) {
  return (
    <section>
      <h2>Next orders</h2>
      {orders.length === 0 ? (
        <Empty title="Nothing to order">
          <p>Stock lasts past the next deliveries of every supplier whose days are known.</p>
        </Empty>
      ) : (
        <ul className="ruled">
          {orders.map((order) => (
            <OrderLine key={order.supplier} order={order} />
          ))}
        </ul>
      )}
    </section>
  );
}

function OrderLine({ order: { supplier, orderBy, arrives, lines, total } }: { order: NextOrder }) {
  const venue = useVenue();
  const mayOrder = useMay("runBar");
  return (
    <li>
      {mayOrder ? <Link to="/order">{supplier}</Link> : supplier}, {plural(lines, "line")}
      {total === null ? null : (
        <>
          , <Money amount={total} whole />
        </>
      )}
      <span className="line-more">
        {orderBy === null ? "no order days known" : `order by ${formatWhen(orderBy, venue)}`}
        {arrives === null ? "" : `, arrives ${formatWhen(arrives, venue)}`}
      </span>
    </li>
  );
}
