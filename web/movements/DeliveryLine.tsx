import { readAmount } from "#engine/measure/amount.ts";
import type { Of } from "#engine/stock/movement.ts";
import { itemChoice } from "../book-words.ts";
import { formatMoney } from "../money.ts";
import { Button } from "../parts/Button.tsx";
import { Combobox } from "../parts/Combobox.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
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
        label={say("stock.item")}
        choices={choices.map(itemChoice)}
        value={line.item}
        onChange={pick}
      />
      <Select
        label={say("movements.pack")}
        className="short-field"
        options={names.length === 0 ? [""] : names}
        value={line.pack}
        disabled={line.item === null}
        onChange={(event) => onChange({ ...line, pack: event.target.value })}
      />
      <Field
        label={say("movements.howMany")}
        inputMode="decimal"
        className="short-field"
        required
        value={line.quantity}
        error={isNumber(line.quantity) ? undefined : say("movements.plainNumber")}
        onChange={(event) => onChange({ ...line, quantity: event.target.value })}
      />
      <Select
        label={say("movements.of")}
        className="short-field"
        options={[
          { value: "container", label: say("movements.containers") },
          {
            value: "case",
            label:
              pack === undefined ? say("movements.cases") : say("movements.casesOf", { count: pack.perCase }),
          },
        ]}
        value={line.of}
        onChange={(event) => onChange({ ...line, of: event.target.value as Of })}
      />
      <Field
        label={say("movements.linePrice", { currency })}
        inputMode="decimal"
        className="short-field"
        value={line.price}
        error={isNumber(line.price) ? undefined : say("movements.plainNumber")}
        hint={
          usual === null ? undefined : say("movements.usualPrice", { money: formatMoney(usual, currency) })
        }
        onChange={(event) => onChange({ ...line, price: event.target.value })}
      />
      {pack?.depositMinor == null && line.deposit === "" && line.empties === "" ? null : (
        <>
          <Field
            label={say("movements.depositCharged", { currency })}
            inputMode="decimal"
            className="short-field"
            value={line.deposit}
            onChange={(event) => onChange({ ...line, deposit: event.target.value })}
          />
          <Field
            label={say("movements.emptiesReturned")}
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
          aria-label={
            line.item === null
              ? say("movements.removeEmptyLine")
              : say("movements.removeLine", { item: line.item })
          }
          onClick={onRemove}
        >
          {say("movements.remove")}
        </Button>
      )}
    </li>
  );
}

/** Whether what was typed can be read; nothing typed is no mistake yet. */
function isNumber(typed: string): boolean {
  const number = readAmount(typed, { decimalComma: true });
  return typed.trim() === "" || (number !== undefined && number >= 0);
}
