import { useState } from "react";
import type { CatalogueAnswer } from "../answers.ts";
import { Button } from "../parts/Button.tsx";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { say } from "../texts/say.ts";
import { SupplierForm } from "./SupplierForm.tsx";
import { weekdayName } from "./weekday-name.ts";

const NEW_BUTTON = "new-supplier";
const NEW = "";

/** Who is bought from and on which days: without them nothing can be ordered in time. */
export function Suppliers({ catalogue }: { catalogue: CatalogueAnswer }) {
  const { suppliers, supplierDays } = catalogue;
  const [open, setOpen] = useState<string | null>(null);
  const close = () => {
    setOpen(null);
    focusIfLost(NEW_BUTTON);
  };
  const daysOf = (name: string) => supplierDays.filter(({ supplier }) => supplier === name);
  return (
    <section>
      <h2>{say("prices.suppliers")}</h2>
      <p className="soft">{say(suppliers.length === 0 ? "prices.noSuppliers" : "prices.suppliersMore")}</p>
      <ul className="ruled">
        {suppliers.map((supplier) => (
          <li key={supplier.name}>
            <span className="supplier-head">
              <strong>{supplier.name}</strong>
              <Button
                kind="quiet"
                aria-expanded={open === supplier.name}
                onClick={() => setOpen(open === supplier.name ? null : supplier.name)}
              >
                {say(open === supplier.name ? "parts.close" : "prices.changeDays")}
                <span className="visually-hidden"> {supplier.name}</span>
              </Button>
            </span>
            <span className="line-more">
              {daysOf(supplier.name).length === 0
                ? say("prices.noDays")
                : daysOf(supplier.name)
                    .map(({ orderDay, orderBy, deliveryDay, deliveryAt }) =>
                      say("prices.orderDay", {
                        day: weekdayName(orderDay),
                        orderBy,
                        delivery: weekdayName(deliveryDay),
                        deliveryAt,
                      }),
                    )
                    .join(" ")}
            </span>
            {open === supplier.name ? (
              <SupplierForm supplier={supplier} days={daysOf(supplier.name)} onClose={close} />
            ) : null}
          </li>
        ))}
      </ul>
      {open === NEW ? (
        <SupplierForm supplier={null} days={[]} onClose={close} />
      ) : (
        <Button id={NEW_BUTTON} onClick={() => setOpen(NEW)}>
          {say("prices.newSupplier")}
        </Button>
      )}
    </section>
  );
}
