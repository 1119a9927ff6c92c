import { Link } from "@tanstack/react-router";
import type { ReactNode } from "react";
import type { OrderReport } from "../answers.ts";
import { formatMoney, listWords } from "../format.ts";
import { Quantity } from "../parts/Quantity.tsx";
import { useVenue } from "../shell/venue.tsx";

/** What is used but not on any order, and what to do about it. Silence here would read as "enough". */
export function LeftAside({
  report: { suppliers, noSupplier, notCounted, leftOut },
}: {
  report: OrderReport;
}) {
  const { currency } = useVenue();
  const unplanned = suppliers.filter((supplier) => supplier.unplanned.length > 0);
  const isNothing = [unplanned, noSupplier, notCounted, leftOut].every((list) => list.length === 0);
  if (isNothing) return null;
  return (
    <section className="left-aside">
      <h2>Not on these orders</h2>
      <dl>
        {leftOut.length === 0 ? null : (
          <Reason name="Left out by the budget">
            <ul>
              {leftOut.map(({ supplier, item, pack, quantity, cost }) => (
                <li key={`${supplier} ${item} ${pack}`}>
                  {item}, {quantity} × {pack} from {supplier}, {formatMoney(cost, currency)}
                </li>
              ))}
            </ul>
          </Reason>
        )}
        {notCounted.length === 0 ? null : (
          <Reason name="Never counted whole">
            What there is, is not known, so nothing is ordered. <Link to="/count">Count</Link>{" "}
            {listWords(notCounted)}.
          </Reason>
        )}
        {noSupplier.length === 0 ? null : (
          <Reason name="No supplier">
            Used in a week, but no pack says who sells it:{" "}
            {noSupplier.map(({ item, base, expectedUse }, place) => (
              <span key={item}>
                {place === 0 ? "" : "; "}
                {item} (<Quantity amount={expectedUse} base={base} />)
              </span>
            ))}
            .
          </Reason>
        )}
        {unplanned.map(({ supplier, unplanned: items }) => (
          <Reason key={supplier} name={`${supplier} has no order days`}>
            Nobody knows when it would arrive, so nothing is reckoned: {listWords(items)}.
          </Reason>
        ))}
      </dl>
    </section>
  );
}

function Reason({ name, children }: { name: string; children: ReactNode }) {
  return (
    <>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </>
  );
}
