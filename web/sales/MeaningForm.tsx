import { useQuery } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import { readAmount } from "#engine/measure/amount.ts";
import { UNITS, type Unit } from "#engine/measure/units.ts";
import type { RingName } from "#engine/sales/ring.ts";
import { formatShare } from "../figures.ts";
import { Button } from "../parts/Button.tsx";
import { Combobox } from "../parts/Combobox.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { Problems } from "../parts/Problems.tsx";
import { catalogueQuery } from "../queries.ts";
import { say } from "../texts/say.ts";
import { asIgnored } from "./meaning-of.ts";
import type { UnmappedName } from "./sales-queries.ts";
import { useAcceptNames } from "./use-accept-names.ts";

/** Says that a ring name is a drink, a pour or container of an item, or nothing that stock knows of. */
export function MeaningForm({ name, onDone }: { name: UnmappedName; onDone: () => void }) {
  const { ringName, suggestions } = name;
  const { data: catalogue } = useQuery(catalogueQuery);
  const [meaning, setMeaning] = useState<string | null>(null);
  const [serves, setServes] = useState("1");
  const [amount, setAmount] = useState("");
  const [unit, setUnit] = useState<Unit>("oz");
  const isDrink = catalogue?.drinks.some((drink) => drink.name === meaning) ?? false;
  const save = useAcceptNames();
  const keep = (ring: RingName) => save.mutate([ring], { onSuccess: onDone });
  const poured = amount.trim() === "" ? null : (readAmount(amount, { decimalComma: true }) ?? Number.NaN);
  const servesRead = readAmount(serves, { decimalComma: true }) ?? Number.NaN;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (meaning === null) return;
    const soldAs = isDrink
      ? ({ kind: "drink", drink: meaning } as const)
      : ({ kind: "item", item: meaning } as const);
    keep({
      ringName,
      soldAs,
      serves: isDrink ? servesRead : 1,
      amount: isDrink ? null : poured,
      unit: isDrink || poured === null ? null : unit,
    });
  };
  const ignore = () => keep(asIgnored(name));
  const isWrong = Number.isNaN(isDrink ? servesRead : (poured ?? 0));
  return (
    <form className="meaning" onSubmit={submit}>
      {suggestions.length === 0 ? null : (
        <div className="suggestions">
          <span className="soft">{say("sales.alike")}</span>
          {suggestions.map(({ name: alike, score, kind, reason, serves: says }) => (
            <Button
              key={`${kind} ${alike}`}
              aria-pressed={meaning === alike}
              title={reason}
              onClick={() => {
                setMeaning(alike);
                if (says !== null) setServes(String(says));
              }}
            >
              {alike} <span className="soft">{formatShare(Math.round(score) / 100)}</span>
            </Button>
          ))}
        </div>
      )}
      <div className="field-row">
        <Combobox
          key={catalogue === undefined ? "empty" : "full"}
          label={say("sales.nameIs", { name: ringName })}
          choices={choicesOf(catalogue)}
          value={meaning}
          onChange={setMeaning}
        />
        {meaning === null ? null : isDrink ? (
          <Field
            label={say("sales.servesOfIt")}
            inputMode="decimal"
            value={serves}
            error={Number.isNaN(servesRead) ? say("sales.aNumber") : undefined}
            onChange={(event) => setServes(event.target.value)}
          />
        ) : (
          <>
            <Field
              label={say("sales.amountOfOne")}
              hint={say("sales.amountOfOneHint")}
              inputMode="decimal"
              value={amount}
              error={Number.isNaN(poured) ? say("sales.writeNumber") : undefined}
              onChange={(event) => setAmount(event.target.value)}
            />
            <Select
              label={say("stock.unit")}
              options={UNITS}
              value={unit}
              onChange={(event) => setUnit(event.target.value as Unit)}
            />
          </>
        )}
      </div>
      <div className="preview-acts">
        <Button kind="main" type="submit" disabled={meaning === null || isWrong || save.isPending}>
          {say("sales.saveMeaning")}
        </Button>
        <Button onClick={ignore} disabled={save.isPending}>
          {say("sales.noStock")}
        </Button>
      </div>
      <Problems error={save.error} />
    </form>
  );
}

function choicesOf(
  catalogue: { drinks: { name: string }[]; items: { name: string; category: string }[] } | undefined,
) {
  if (catalogue === undefined) return [];
  const drinks = catalogue.drinks.map(({ name }) => ({ value: name, detail: say("sales.drink") }));
  const known = new Set(drinks.map(({ value }) => value));
  const items = catalogue.items.filter(({ name }) => !known.has(name));
  return [...drinks, ...items.map(({ name, category }) => ({ value: name, detail: category }))];
}
