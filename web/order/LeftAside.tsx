import { Link } from "@tanstack/react-router";
import type { ReactNode } from "react";
import type { OrderReport } from "../answers.ts";
import { listWords } from "../format.ts";
import { formatMoney } from "../money.ts";
import { Quantity } from "../parts/Quantity.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say, sayWith } from "../texts/say.ts";

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
      <h2>{say("order.notOn")}</h2>
      <dl>
        {leftOut.length === 0 ? null : (
          <Reason name={say("order.leftOut")}>
            <ul>
              {leftOut.map(({ supplier, item, pack, quantity, cost }) => (
                <li key={`${supplier} ${item} ${pack}`}>
                  {say("order.leftOutLine", {
                    item,
                    quantity,
                    pack,
                    supplier,
                    money: formatMoney(cost, currency),
                  })}
                </li>
              ))}
            </ul>
          </Reason>
        )}
        {notCounted.length === 0 ? null : (
          <Reason name={say("order.neverCounted")}>
            {sayWith("order.neverCountedWhy", {
              link: <Link to="/count">{say("order.countLink")}</Link>,
              items: listWords(notCounted),
            })}
          </Reason>
        )}
        {noSupplier.length === 0 ? null : (
          <Reason name={say("order.noSupplier")}>
            {sayWith("order.noSupplierWhy", {
              items: noSupplier.map(({ item, base, expectedUse }, place) => (
                <span key={item}>
                  {place === 0 ? "" : "; "}
                  {item} (<Quantity amount={expectedUse} base={base} />)
                </span>
              )),
            })}
          </Reason>
        )}
        {unplanned.map(({ supplier, unplanned: items }) => (
          <Reason key={supplier} name={say("order.unplanned", { supplier })}>
            {say("order.unplannedWhy", { items: listWords(items) })}
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
