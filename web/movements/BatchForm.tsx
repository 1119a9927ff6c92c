import { type FormEvent, useState } from "react";
import { readAmount } from "#engine/measure/amount.ts";
import type { Unit } from "#engine/measure/units.ts";
import type { BatchEntry, UsedInput } from "#engine/stock/movement.ts";
import { itemChoice } from "../book-words.ts";
import { instantOfInput, localInputOf } from "../moment.ts";
import { nowInstant } from "../now.ts";
import { Combobox } from "../parts/Combobox.tsx";
import { Field } from "../parts/Field.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import type { FormProps } from "./FactForm.tsx";
import {
  AmountFields,
  amountOf,
  ByField,
  FormActs,
  MomentField,
  useCatalogue,
  useEnteredBy,
} from "./form-parts.tsx";

/** One making of a prep, with what it really gave. */
export function BatchForm({ initial, act, isBusy, onSubmit, onLeave }: FormProps<BatchEntry>) {
  const venue = useVenue();
  const { items, preps } = useCatalogue();
  const [at, setAt] = useState(localInputOf(initial?.at ?? nowInstant(), venue));
  const [prep, setPrep] = useState<string | null>(initial?.prep ?? null);
  const [made, setMade] = useState(initial === undefined ? "" : String(initial.made));
  const [unit, setUnit] = useState<Unit>(initial?.unit ?? "ml");
  const [by, setBy] = useEnteredBy(initial?.by);
  const [note, setNote] = useState(initial?.note ?? "");
  const [inputs, setInputs] = useState(() => (initial?.inputs ?? []).map(asTyped));
  const moment = instantOfInput(at, venue);
  const read = amountOf(made);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (moment === undefined || read === undefined || prep === null) return;
    const used = prep === initial?.prep ? keptInputs(inputs) : [];
    onSubmit([
      {
        at: moment,
        prep,
        made: read,
        unit,
        by: by.trim(),
        note: note.trim(),
        ...(used.length === 0 ? {} : { inputs: used }),
      },
    ]);
  };
  const pick = (picked: string | null) => {
    setPrep(picked);
    const own = preps.find((version) => version.prep === picked)?.unit;
    if (own !== undefined) setUnit(own);
  };
  const madeHere = items.filter(({ inHouse }) => inHouse);
  return (
    <form className="fact-form" onSubmit={submit}>
      <div className="field-row">
        <MomentField value={at} onChange={setAt} />
        <Combobox
          label={say("movements.prep")}
          choices={madeHere.map(itemChoice)}
          value={prep}
          onChange={pick}
        />
        <AmountFields
          amount={made}
          unit={unit}
          base={items.find(({ name }) => name === prep)?.base}
          onAmount={setMade}
          onUnit={setUnit}
        />
        <ByField value={by} onChange={setBy} />
        {inputs.map(({ item, unit: own, text }) => (
          <Field
            key={item}
            label={say("movements.inputUsed", { item, unit: own })}
            hint={say("movements.inputHint")}
            value={text}
            onChange={(event) =>
              setInputs(inputs.map((one) => (one.item === item ? { ...one, text: event.target.value } : one)))
            }
          />
        ))}
        <Field label={say("movements.note")} value={note} onChange={(event) => setNote(event.target.value)} />
      </div>
      <FormActs
        {...{ act, isBusy, onLeave }}
        isReady={prep !== null && read !== undefined && moment !== undefined}
      />
    </form>
  );
}

/** What a batch used, as a form holds it. */
type TypedInput = UsedInput & { text: string };

function asTyped(used: UsedInput): TypedInput {
  return { ...used, text: String(used.amount) };
}

/** What is still said of the inputs; an emptied field leaves its item to the spec. */
function keptInputs(inputs: readonly TypedInput[]): UsedInput[] {
  return inputs.flatMap(({ item, unit, text }) => {
    const amount = readAmount(text, { decimalComma: true });
    return amount === undefined || amount < 0 ? [] : [{ item, amount, unit }];
  });
}
