import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { type FormEvent, useState } from "react";
import type { Delivery } from "#engine/stock/movement.ts";
import { instantOfInput, localInputOf } from "../moment.ts";
import { nowInstant } from "../now.ts";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { openOrdersQuery } from "../queries.ts";
import { useVenue } from "../shell/venue.tsx";
import { say, sayWith } from "../texts/say.ts";
import { DeliveryLine } from "./DeliveryLine.tsx";
import { draftOf, emptyLine, factsOf, type LineDraft, orderedLines } from "./delivery-lines.ts";
import { entriesQuery } from "./entries.ts";
import type { FormProps } from "./FactForm.tsx";
import { ByField, FormActs, MomentField, useCatalogue, useEnteredBy } from "./form-parts.tsx";

/** A delivery as its invoice has it: who, which invoice, and its lines. A correction is of one line. */
export function DeliveryForm({ initial, act, isBusy, onSubmit, onLeave }: FormProps<Delivery>) {
  const venue = useVenue();
  const { suppliers, packs } = useCatalogue();
  const names = supplierNames(suppliers, packs, initial?.supplier);
  const [at, setAt] = useState(localInputOf(initial?.at ?? nowInstant(), venue));
  const [supplier, setSupplier] = useState(initial?.supplier ?? names[0] ?? "");
  const [invoice, setInvoice] = useState(initial?.invoice ?? "");
  const [by, setBy] = useEnteredBy(initial?.by);
  const [lines, setLines] = useState<readonly LineDraft[]>([
    initial === undefined ? emptyLine(0) : draftOf(initial, venue.currency),
  ]);
  const moment = instantOfInput(at, venue);
  const head = { at: moment ?? "", supplier, invoice: invoice.trim(), by: by.trim() };
  const facts = moment === undefined || supplier === "" ? undefined : factsOf(lines, head, venue.currency);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (facts !== undefined) onSubmit(facts);
  };
  const nextKey = Math.max(...lines.map(({ key }) => key)) + 1;
  return (
    <form className="fact-form" onSubmit={submit}>
      {names.length > 0 ? null : (
        <p>
          {sayWith("movements.noSupplier", {
            link: <Link to="/prices">{say("movements.noSupplierLink")}</Link>,
          })}
        </p>
      )}
      <div className="field-row">
        <MomentField value={at} onChange={setAt} />
        <Select
          label={say("movements.supplier")}
          options={names}
          value={supplier}
          onChange={(event) => setSupplier(event.target.value)}
        />
        <Field
          label={say("movements.invoice")}
          className="short-field"
          value={invoice}
          hint={useEnteredBefore({ supplier, invoice: invoice.trim(), isNew: initial === undefined })}
          onChange={(event) => setInvoice(event.target.value)}
        />
        <ByField value={by} onChange={setBy} />
      </div>
      <ol className="delivery-lines">
        {lines.map((line) => (
          <DeliveryLine
            key={line.key}
            line={line}
            supplier={supplier}
            date={at.slice(0, 10)}
            onChange={(changed) => setLines(lines.map((one) => (one.key === line.key ? changed : one)))}
            onRemove={
              lines.length < 2 ? undefined : () => setLines(lines.filter(({ key }) => key !== line.key))
            }
          />
        ))}
      </ol>
      {initial === undefined ? (
        <div className="form-acts">
          <Button onClick={() => setLines([...lines, emptyLine(nextKey)])}>{say("movements.addLine")}</Button>
          <FromOrder supplier={supplier} onFill={setLines} />
        </div>
      ) : null}
      <FormActs {...{ act, isBusy, onLeave }} isReady={facts !== undefined} />
    </form>
  );
}

/** Fills the form with what is on order from the supplier; what really came is then set right line by line. */
function FromOrder({ supplier, onFill }: { supplier: string; onFill: (lines: LineDraft[]) => void }) {
  const venue = useVenue();
  const { packs } = useCatalogue();
  const { data: orders = [] } = useQuery(openOrdersQuery);
  const lines = orderedLines(orders, { supplier, packs, venue });
  if (lines.length === 0) return null;
  return (
    <Button onClick={() => onFill(lines)}>{say("movements.fillOrdered", { count: lines.length })}</Button>
  );
}

function useEnteredBefore(asked: { supplier: string; invoice: string; isNew: boolean }): string | undefined {
  const { data: entries = [] } = useQuery(entriesQuery("deliveries"));
  if (!asked.isNew || asked.invoice === "") return undefined;
  const isSame = ({ supplier, invoice }: Delivery) =>
    supplier === asked.supplier && invoice === asked.invoice;
  return entries.some(({ fact }) => isSame(fact)) ? say("movements.enteredBefore") : undefined;
}

function supplierNames(
  suppliers: readonly { name: string }[],
  packs: readonly { supplier: string | null }[],
  initial: string | undefined,
): string[] {
  const named = [
    ...suppliers.map(({ name }) => name),
    ...packs.map(({ supplier }) => supplier),
    initial ?? null,
  ];
  return [...new Set(named.filter((name) => name !== null))];
}
