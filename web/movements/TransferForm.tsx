import { type FormEvent, useState } from "react";
import type { Unit } from "#engine/measure/units.ts";
import type { Transfer } from "#engine/stock/movement.ts";
import { itemChoice } from "../book-words.ts";
import { instantOfInput, localInputOf } from "../moment.ts";
import { nowInstant } from "../now.ts";
import { Combobox } from "../parts/Combobox.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import type { FormProps } from "./FactForm.tsx";
import { AmountFields, amountOf, FormActs, MomentField, useCatalogue } from "./form-parts.tsx";

const DIRECTIONS = [
  { value: "in", text: "movements.cameIn" },
  { value: "out", text: "movements.wentOut" },
] as const;

/** Stock that came from, or went to, another place of the house. */
export function TransferForm({ initial, act, isBusy, onSubmit, onLeave }: FormProps<Transfer>) {
  const venue = useVenue();
  const { items } = useCatalogue();
  const [at, setAt] = useState(localInputOf(initial?.at ?? nowInstant(), venue));
  const [direction, setDirection] = useState<Transfer["direction"]>(initial?.direction ?? "out");
  const [place, setPlace] = useState(initial?.place ?? "");
  const [item, setItem] = useState<string | null>(initial?.item ?? null);
  const [amount, setAmount] = useState(initial === undefined ? "" : String(initial.amount));
  const [unit, setUnit] = useState<Unit>(initial?.unit ?? "ml");
  const base = items.find(({ name }) => name === item)?.base;
  const moment = instantOfInput(at, venue);
  const read = amountOf(amount);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (moment === undefined || read === undefined || item === null) return;
    onSubmit([{ at: moment, direction, place: place.trim(), item, amount: read, unit }]);
  };
  const pick = (picked: string | null) => {
    setItem(picked);
    const own = items.find(({ name }) => name === picked)?.base;
    if (own !== undefined) setUnit(own === "ml" ? venue.show : own);
  };
  return (
    <form className="fact-form" onSubmit={submit}>
      <div className="field-row">
        <MomentField value={at} onChange={setAt} />
        <Select
          label={say("movements.direction")}
          className="short-field"
          options={DIRECTIONS.map(({ value, text }) => ({ value, label: say(text) }))}
          value={direction}
          onChange={(event) => setDirection(event.target.value as Transfer["direction"])}
        />
        <Field
          label={say("movements.place")}
          required
          value={place}
          onChange={(event) => setPlace(event.target.value)}
        />
        <Combobox label={say("stock.item")} choices={items.map(itemChoice)} value={item} onChange={pick} />
        <AmountFields {...{ amount, unit, base }} onAmount={setAmount} onUnit={setUnit} />
      </div>
      <FormActs
        {...{ act, isBusy, onLeave }}
        isReady={item !== null && read !== undefined && moment !== undefined && place.trim() !== ""}
      />
    </form>
  );
}
