import type { Of } from "#engine/stock/movement.ts";
import { formatMoney } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { Combobox } from "../parts/Combobox.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { useVenue } from "../shell/venue.tsx";
import { type LineDraft, packNames, usualPrice } from "./delivery-lines.ts";
import { useCatalogue } from "./form-parts.tsx";

type Props = {
  line: LineDraft;
  supplier: string;
  date: string;
  onChange: (line: LineDraft) => void;
  onRemove: (() => void) | undefined;
};

/** One line of an invoice: item, pack, how many containers or cases, and what it cost. */
export function DeliveryLine({ line, supplier, date, onChange, onRemove }: Props) {
  const { currency } = useVenue();
  const { items, packs } = useCatalogue();
  const bought = new Set(packs.map(({ item }) => item));
  const choices = items.filter(({ name }) => bought.has(name));
  const names = line.item === null ? [] : packNames(packs, { item: line.item, supplier });
  const pack = packs.find((one) => one.item === line.item && one.pack === line.pack);
  const usual = usualPrice(packs, line, { supplier, date });
  const pick = (item: string | null) =>
    onChange({ ...line, item, pack: item === null ? "" : (packNames(packs, { item, supplier })[0] ?? "") });
  return (
    <li className="field-row">
      <Combobox
        label="Item"
        choices={choices.map(({ name, category }) => ({ value: name, detail: category }))}
        value={line.item}
        onChange={pick}
      />
      <Select
        label="Pack"
        className="short-field"
        options={names.length === 0 ? [""] : names}
        value={line.pack}
        disabled={line.item === null}
        onChange={(event) => onChange({ ...line, pack: event.target.value })}
      />
      <Field
        label="How many"
        inputMode="decimal"
        className="short-field"
        required
        value={line.quantity}
        onChange={(event) => onChange({ ...line, quantity: event.target.value })}
      />
      <Select
        label="Of"
        className="short-field"
        options={[
          { value: "container", label: "containers" },
          { value: "case", label: pack === undefined ? "cases" : `cases of ${pack.perCase}` },
        ]}
        value={line.of}
        onChange={(event) => onChange({ ...line, of: event.target.value as Of })}
      />
      <Field
        label={`Price of the line, ${currency}`}
        inputMode="decimal"
        className="short-field"
        value={line.price}
        hint={usual === null ? undefined : `usually ${formatMoney(usual, currency)}`}
        onChange={(event) => onChange({ ...line, price: event.target.value })}
      />
      {pack?.depositMinor == null && line.deposit === "" && line.empties === "" ? null : (
        <>
          <Field
            label={`Deposit charged, ${currency}`}
            inputMode="decimal"
            className="short-field"
            value={line.deposit}
            onChange={(event) => onChange({ ...line, deposit: event.target.value })}
          />
          <Field
            label="Empties returned"
            inputMode="decimal"
            className="short-field"
            value={line.empties}
            onChange={(event) => onChange({ ...line, empties: event.target.value })}
          />
        </>
      )}
      {onRemove === undefined ? null : (
        <Button
          kind="quiet"
          aria-label={`Remove the line of ${line.item ?? "nothing yet"}`}
          onClick={onRemove}
        >
          Remove
        </Button>
      )}
    </li>
  );
}
