import { type FormEvent, useState } from "react";
import type { BatchEntry } from "#engine/stock/movement.ts";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useDeviceSetting } from "../parts/use-device-setting.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { plainNumber, unitWord, wholeUp } from "./amounts.ts";
import { entryMoment } from "./entry-moment.ts";
import type { BatchCard } from "./prep-queries.ts";
import { typedAmount, typedIn } from "./typed-amount.ts";
import { OtherInput, type TypedInput, UsedField, UsedInputs } from "./UsedInputs.tsx";
import { inputsToRecord, likelyWentIn, type WentIn } from "./used-inputs.ts";

type FormProps = {
  card: BatchCard;
  isBusy: boolean;
  error: Error | null;
  onMade: (batch: BatchEntry) => void;
};

/** Asks what came out and, where it was not as the card says, what went in. */
export function MadeForm({ card, isBusy, error, onMade }: FormProps) {
  const { prep, make, unit, date, inputs } = card;
  const venue = useVenue();
  // Until something is typed it is what the card makes.
  const [typedMade, setTypedMade] = useState<string | null>(null);
  const [by, setBy] = useDeviceSetting("prep-by", "");
  const [typed, setTyped] = useState<ReadonlyMap<string, TypedInput>>(new Map());
  const [chosen, setChosen] = useState<WentIn | null>(null);
  const [isOpen, setOpen] = useState(false);
  const made = typedMade ?? plainNumber(wholeUp(make, unit));
  const amount = typedIn(made, unit, venue);
  const isMade = amount !== undefined && amount > 0;
  const likely =
    isMade && inputs.some(({ base }) => base !== "each") ? likelyWentIn(amount, make) : undefined;
  const wentIn = likely === undefined ? undefined : (chosen ?? likely);
  const fruit = inputs.filter(({ base }) => base === "each");
  const rest = inputs.filter(({ base }) => base !== "each");
  const onType = (item: string, next: TypedInput) => setTyped(new Map(typed).set(item, next));
  const read = readInputs(typed, venue);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (!isMade || read === undefined) return;
    const used = inputsToRecord({ planned: inputs, typed: read, wentIn });
    onMade({
      at: entryMoment({ date, planAt: `${date} 14:00`, venue }),
      prep,
      made: amount,
      unit,
      by: by.trim(),
      note: "",
      ...(used.length === 0 ? {} : { inputs: used }),
    });
  };
  return (
    <form className="made-it" onSubmit={submit}>
      <h2>{say("prep.madeAsk")}</h2>
      <div className="field-row">
        <Field
          label={say("prep.madeReally", { unit: unitWord(unit) })}
          inputMode="decimal"
          className="wet-field"
          value={made}
          error={isMade ? undefined : say("prep.madeError")}
          onChange={(event) => setTypedMade(event.target.value)}
        />
        {fruit.map((input) => (
          <UsedField
            key={input.item}
            {...input}
            amount={input.pieces ?? input.amount}
            text={typed.get(input.item)?.text ?? ""}
            onType={onType}
          />
        ))}
        <Field
          label={say("prep.madeBy")}
          className="wet-field"
          value={by}
          onChange={(event) => setBy(event.target.value)}
        />
      </div>
      {wentIn === undefined ? null : <WhatWentIn wentIn={wentIn} onChoose={setChosen} />}
      {isOpen ? (
        <div className="other-inputs" ref={focusFirst}>
          <UsedInputs planned={rest} typed={withoutItems(typed, fruit)} onType={onType} />
          <OtherInput prep={prep} onType={onType} />
        </div>
      ) : null}
      <div className="wet-keys">
        <Button
          kind="main"
          type="submit"
          className="wet-key"
          disabled={!isMade || read === undefined}
          isBusy={isBusy}
        >
          {say("prep.madeIt")}
        </Button>
        {isOpen ? null : (
          <Button className="wet-key" onClick={() => setOpen(true)}>
            {say("prep.otherWentIn")}
          </Button>
        )}
      </div>
      <Problems error={error} />
    </form>
  );
}

/** The button that opened the fields is gone with it. */
function focusFirst(fields: HTMLElement | null): void {
  fields?.querySelector("input")?.focus();
}

/** What was typed, in base units; undefined while something typed is no amount. */
function readInputs(typed: ReadonlyMap<string, TypedInput>, venue: ReturnType<typeof useVenue>) {
  const read = new Map<string, { amount: number; base: TypedInput["base"] }>();
  for (const [item, { text, base }] of typed) {
    if (text.trim() === "") continue;
    const amount = typedAmount(text, base, venue);
    if (amount === undefined) return undefined;
    read.set(item, { amount, base });
  }
  return read;
}

function withoutItems(typed: ReadonlyMap<string, TypedInput>, out: readonly { item: string }[]) {
  return new Map([...typed].filter(([item]) => !out.some((input) => input.item === item)));
}

type WentInProps = { wentIn: WentIn; onChoose: (way: WentIn) => void };

function WhatWentIn({ wentIn, onChoose }: WentInProps) {
  const ways = [
    { way: "as the card says", text: "prep.wentInAsCard" },
    { way: "in proportion", text: "prep.wentInProportion" },
  ] as const;
  return (
    <fieldset className="wet-keys went-in">
      <legend>{say("prep.wentIn")}</legend>
      {ways.map(({ way, text }) => (
        <button
          key={way}
          type="button"
          className="button wet-key"
          aria-pressed={wentIn === way}
          onClick={() => onChoose(way)}
        >
          {say(text)}
        </button>
      ))}
    </fieldset>
  );
}
