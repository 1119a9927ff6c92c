import { useQuery } from "@tanstack/react-query";
import { useId, useState } from "react";
import { todayAt } from "../moment.ts";
import { Field } from "../parts/Field.tsx";
import { weekQuery } from "../queries.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import type { Asked } from "./price-list.ts";

type Props = { asked: Asked | null; suppliers: readonly string[]; onAsk: (asked: Asked) => void };

/** Whose list it is, from which day its prices hold, and the file. */
export function ListForm({ asked, suppliers, onAsk }: Props) {
  const venue = useVenue();
  const { data: week, isPending } = useQuery(weekQuery);
  const [supplier, setSupplier] = useState("");
  const [typedFrom, setFrom] = useState<string | null>(null);
  const [file, setFile] = useState<File | null>(null);
  const listId = useId();
  // A book in which nothing has happened has no day of its own.
  const today = isPending ? "" : todayAt(venue);
  const from = typedFrom ?? week?.now.businessDate ?? today;
  const waits = file !== null && (supplier.trim() === "" || from === "");
  const ask = (next: { supplier: string; from: string; file: File | null }) => {
    if (next.file === null || next.supplier.trim() === "" || next.from === "") return;
    const isSame = asked?.file === next.file;
    onAsk({
      ...next,
      file: next.file,
      pricePer: isSame ? asked.pricePer : undefined,
      decimal: isSame ? asked.decimal : undefined,
      chosen: {},
    });
  };
  return (
    <form className="prices-form field-row" onSubmit={(event) => event.preventDefault()}>
      <Field
        label={say("prices.supplier")}
        hint={say("prices.supplierHint")}
        required
        list={listId}
        value={supplier}
        error={waits && supplier.trim() === "" ? say("prices.supplierMissing") : undefined}
        onChange={(event) => setSupplier(event.target.value)}
        onBlur={() => ask({ supplier, from, file })}
      />
      <datalist id={listId}>
        {suppliers.map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      <Field
        label={say("prices.from")}
        hint={say("prices.fromHint")}
        type="date"
        required
        value={from}
        error={waits && from === "" ? say("prices.fromMissing") : undefined}
        onChange={(event) => {
          setFrom(event.target.value);
          ask({ supplier, from: event.target.value, file });
        }}
      />
      <Field
        label={say("prices.list")}
        hint={say("prices.listHint")}
        type="file"
        accept=".csv,.tsv,.txt,text/csv,text/plain"
        onChange={(event) => {
          const [chosen = null] = event.target.files ?? [];
          setFile(chosen);
          ask({ supplier, from, file: chosen });
        }}
      />
    </form>
  );
}
