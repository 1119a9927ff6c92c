import { type FormEvent, useState } from "react";
import type { Unit } from "#engine/measure/units.ts";
import { LOSS_KINDS, type Loss } from "#engine/stock/movement.ts";
import { itemChoice } from "../book-words.ts";
import { instantOfInput, localInputOf } from "../moment.ts";
import { nowInstant } from "../now.ts";
import { Combobox } from "../parts/Combobox.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import type { FormProps } from "./FactForm.tsx";
import { LOSS_WORDS } from "./fact-words.ts";
import {
  AmountFields,
  amountOf,
  ByField,
  FormActs,
  MomentField,
  useCatalogue,
  useEnteredBy,
} from "./form-parts.tsx";

/** Stock gone without a sale: of an item by amount, or of a whole drink by serves. */
export function LossForm({ initial, act, isBusy, onSubmit, onLeave }: FormProps<Loss>) {
  const venue = useVenue();
  const { items, drinks } = useCatalogue();
  const [at, setAt] = useState(localInputOf(initial?.at ?? nowInstant(), venue));
  const [kind, setKind] = useState<Loss["kind"]>(initial?.kind ?? "spill");
  const [what, setWhat] = useState<string | null>(initial?.what ?? null);
  const [amount, setAmount] = useState(initial === undefined ? "" : String(initial.amount));
  const [unit, setUnit] = useState<Unit>(
    initial === undefined || initial.unit === "serve" ? "ml" : initial.unit,
  );
  const [by, setBy] = useEnteredBy(initial?.by);
  const [note, setNote] = useState(initial?.note ?? "");
  const item = items.find(({ name }) => name === what);
  const isDrink = item === undefined && drinks.some(({ name }) => name === what);
  const moment = instantOfInput(at, venue);
  const read = amountOf(amount);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (moment === undefined || read === undefined || what === null) return;
    onSubmit([
      {
        at: moment,
        kind,
        what,
        amount: read,
        unit: isDrink ? "serve" : unit,
        by: by.trim(),
        note: note.trim(),
      },
    ]);
  };
  const pick = (picked: string | null) => {
    setWhat(picked);
    const base = items.find(({ name }) => name === picked)?.base;
    if (base !== undefined) setUnit(base === "ml" ? venue.show : base);
  };
  return (
    <form className="fact-form" onSubmit={submit}>
      <div className="field-row">
        <MomentField value={at} onChange={setAt} />
        <Select
          label={say("movements.kind")}
          className="short-field"
          options={LOSS_KINDS.map((value) => ({ value, label: say(LOSS_WORDS[value]) }))}
          value={kind}
          onChange={(event) => setKind(event.target.value as Loss["kind"])}
        />
        <Combobox
          label={say("movements.itemOrDrink")}
          choices={choicesOf(items, drinks)}
          value={what}
          onChange={pick}
        />
        {isDrink ? (
          <Field
            label={say("movements.serves")}
            inputMode="decimal"
            className="short-field"
            required
            value={amount}
            onChange={(event) => setAmount(event.target.value)}
          />
        ) : (
          <AmountFields {...{ amount, unit }} base={item?.base} onAmount={setAmount} onUnit={setUnit} />
        )}
        <ByField value={by} onChange={setBy} />
        <Field label={say("movements.note")} value={note} onChange={(event) => setNote(event.target.value)} />
      </div>
      <FormActs
        {...{ act, isBusy, onLeave }}
        isReady={what !== null && read !== undefined && moment !== undefined}
      />
    </form>
  );
}

function choicesOf(
  items: readonly { name: string; category: string }[],
  drinks: readonly { name: string }[],
) {
  const known = new Set(items.map(({ name }) => name));
  return [
    ...items.map(itemChoice),
    ...drinks
      .filter(({ name }) => !known.has(name))
      .map(({ name }) => ({ value: name, detail: say("movements.drink") })),
  ];
}
