import { Link } from "@tanstack/react-router";
import type { OrderReport } from "../answers.ts";
import { formatDate, formatNumber } from "../format.ts";
import { say, sayWith } from "../texts/say.ts";

/** Order lines whose day is over and of which something is still to come. */
export function LateLines({ late }: { late: OrderReport["late"] }) {
  if (late.length === 0) return null;
  return (
    <section className="no-print">
      <h2>{say("order.late")}</h2>
      <ul>
        {late.map(({ order, supplier, item, pack, ordered, received, expected, daysLate }) => (
          <li key={`${order} ${item} ${pack} ${expected}`}>
            {sayWith("order.lateLine", {
              item,
              open: formatNumber(ordered - received),
              ordered: formatNumber(ordered),
              pack,
              supplier,
              date: formatDate(expected),
              days: daysLate,
              link: (
                <Link to="/order/check/$order" params={{ order }}>
                  {say("order.orderLink", { order })}
                </Link>
              ),
            })}
          </li>
        ))}
      </ul>
    </section>
  );
}
