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
      title="Order"
      next={report === undefined ? undefined : <Standing report={report} />}
      actions={
        <div className="field-row">
          <Field
            label="Budget"
            inputMode="decimal"
            className="budget"
            value={typed}
            placeholder="no limit"
            onChange={(event) => setTyped(event.target.value)}
          />
          <Button onClick={() => window.print()}>Print</Button>
          <Link to="/order/pars" className="button button-plain">
            Pars
          </Link>
        </div>
      }
    >
      {report === undefined && error === null ? <Busy what="Weighing pars and deliveries" /> : null}
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
      <Empty title="Nothing to order">
        <p>
          What is on hand and on order lasts until after the next deliveries. If an item is missing here, see
          that it has a pack with a supplier, and that the supplier has order days.
        </p>
      </Empty>
    );
  }
  return needed.map((order) => <SupplierSection key={order.supplier} order={order} at={at} />);
}

function Standing({ report: { at, suppliers } }: { report: OrderReport }) {
  const venue = useVenue();
  const [first] = inOrderOfCutOff(suppliers);
  const standing = `Stock as of ${formatWhen(at, venue)}.`;
  if (first === undefined) return standing;
  if (first.orderBy === null) return `${standing} ${first.supplier} has no order days in the book.`;
  return `${standing} First cut-off: ${first.supplier}, ${formatWhen(first.orderBy, venue)}.`;
}

/** Suppliers with something to order, the earliest cut-off first and those without one last. */
function inOrderOfCutOff(suppliers: readonly SupplierOrder[]): SupplierOrder[] {
  return suppliers
    .filter(({ lines }) => lines.length > 0)
    .sort((a, b) => (a.orderBy ?? "9999").localeCompare(b.orderBy ?? "9999"));
}
