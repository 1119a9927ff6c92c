import "./order.css";
import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { useDeferredValue, useState } from "react";
import type { OrderReport, SupplierOrder } from "../answers.ts";
import { formatWhen } from "../format.ts";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { Empty } from "../parts/Empty.tsx";
import { Field } from "../parts/Field.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { orderQuery } from "../queries.ts";
import { useVenue } from "../shell/venue.tsx";
import { say, sayWith } from "../texts/say.ts";
import { LateLines } from "./LateLines.tsx";
import { LeftAside } from "./LeftAside.tsx";
import { OpenOrders } from "./OpenOrders.tsx";
import { SupplierSection } from "./SupplierSection.tsx";

/** What to order from whom, by when, and why. */
export function OrderPage() {
  const [typed, setTyped] = useState("");
  const budget = useDeferredValue(budgetOf(typed));
  const { data: report, error, refetch } = useQuery(orderQuery({ budget }));
  return (
    <Page
      title={say("order.title")}
      next={report === undefined ? undefined : <Standing report={report} />}
      actions={
        <div className="field-row">
          <Field
            label={say("order.budget")}
            inputMode="decimal"
            className="budget"
            value={typed}
            placeholder={say("order.noLimit")}
            onChange={(event) => setTyped(event.target.value)}
          />
          <Button onClick={() => window.print()}>{say("order.print")}</Button>
          <Link to="/order/pars" className="button button-plain">
            {say("order.pars")}
          </Link>
        </div>
      }
    >
      {report === undefined && error === null ? <Busy what={say("order.weighing")} /> : null}
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {report === undefined ? null : <LateLines late={report.late} />}
      {report === undefined ? null : <Suppliers report={report} />}
      {report === undefined ? null : <LeftAside report={report} />}
      <OpenOrders />
    </Page>
  );
}

/** A decimal comma is as good as a point; what is no number is no budget. */
function budgetOf(typed: string): number | undefined {
  const number = Number(typed.replace(",", "."));
  return typed.trim() === "" || !Number.isFinite(number) || number < 0 ? undefined : number;
}

function Suppliers({ report: { at, suppliers } }: { report: OrderReport }) {
  const needed = inOrderOfCutOff(suppliers);
  if (needed.length === 0) {
    return (
      <Empty title={say("order.nothing")}>
        <p>{sayWith("order.nothingNext", { link: <Link to="/prices">{say("prices.title")}</Link> })}</p>
      </Empty>
    );
  }
  return needed.map((order) => <SupplierSection key={order.supplier} order={order} at={at} />);
}

function Standing({ report: { at, suppliers } }: { report: OrderReport }) {
  const venue = useVenue();
  const [first] = inOrderOfCutOff(suppliers);
  const standing = say("order.stockAsOf", { moment: formatWhen(at, venue) });
  if (first === undefined) return standing;
  const { supplier, orderBy } = first;
  return orderBy === null
    ? `${standing} ${say("order.noOrderDays", { supplier })}`
    : `${standing} ${say("order.firstCutOff", { supplier, moment: formatWhen(orderBy, venue) })}`;
}

/** Suppliers with something to order, the earliest cut-off first and those without one last. */
function inOrderOfCutOff(suppliers: readonly SupplierOrder[]): SupplierOrder[] {
  return suppliers
    .filter(({ lines }) => lines.length > 0)
    .sort((a, b) => (a.orderBy ?? "9999").localeCompare(b.orderBy ?? "9999"));
}
