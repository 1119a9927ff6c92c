import { Link } from "@tanstack/react-router";
import type { OrderReport } from "../answers.ts";
import { formatDate, formatNumber, plural } from "../format.ts";

/** Order lines whose day is over and of which something is still to come. */
export function LateLines({ late }: { late: OrderReport["late"] }) {
  if (late.length === 0) return null;
  return (
    <section className="no-print">
      <h2>Late</h2>
      <ul>
        {late.map(({ order, supplier, item, pack, ordered, received, expected, daysLate }) => (
          <li key={`${order} ${item} ${pack} ${expected}`}>
            {item}: {formatNumber(ordered - received)} of {formatNumber(ordered)} × {pack} still to come from{" "}
            {supplier}, due {formatDate(expected)}, {plural(daysLate, "day")} late (
            <Link to="/order/check/$order" params={{ order }}>
              order {order}
            </Link>
            ).
          </li>
        ))}
      </ul>
    </section>
  );
}
