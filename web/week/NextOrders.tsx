import { Link } from "@tanstack/react-router";
import type { NextOrder } from "../answers.ts";
import { formatWhen } from "../format.ts";
import { Empty } from "../parts/Empty.tsx";
import { Money } from "../parts/Money.tsx";
import { useMay } from "../people/signed-in.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";

/** The orders that come up, by their cut-off. */
export function NextOrders({ orders }: { orders: readonly NextOrder[] }) {
  return (
    <section>
      <h2>{say("week.nextOrders")}</h2>
      {orders.length === 0 ? (
        <Empty title={say("week.noOrders")}>
          <p>{say("week.noOrdersMore")}</p>
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
      {mayOrder ? <Link to="/order">{supplier}</Link> : supplier}, {say("week.lines", { count: lines })}
      {total === null ? null : (
        <>
          , <Money amount={total} whole />
        </>
      )}
      <span className="line-more">
        {orderBy === null
          ? say("week.noOrderDays")
          : say("week.orderBy", { when: formatWhen(orderBy, venue) })}
        {arrives === null ? "" : `, ${say("week.arrives", { when: formatWhen(arrives, venue) })}`}
      </span>
    </li>
  );
}
