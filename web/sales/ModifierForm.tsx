import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import { readAmount } from "#engine/measure/amount.ts";
import { UNITS, type Unit } from "#engine/measure/units.ts";
import type { Modifier } from "#engine/sales/ring.ts";
import { answerOf, server } from "../api.ts";
import { Button } from "../parts/Button.tsx";
import { Combobox } from "../parts/Combobox.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { catalogueQuery } from "../queries.ts";
import { say } from "../texts/say.ts";

type Effect = Modifier["effect"];

const EFFECTS = [
  { value: "none", text: "sales.changesNothing" },
  { value: "swap", text: "sales.swaps" },
  { value: "add", text: "sales.adds" },
  { value: "remove", text: "sales.removes" },
  { value: "times", text: "sales.scales" },
] as const;

/** Says what a modifier does to one serve. */
export function ModifierForm({ modifier, onDone }: { modifier: string; onDone: () => void }) {
  const { data: catalogue } = useQuery(catalogueQuery);
  const queryClient = useQueryClient();
  const notify = useNotify();
  const [effect, setEffect] = useState<Effect>("none");
  const [item, setItem] = useState<string | null>(null);
  const [other, setOther] = useState<string | null>(null);
  const [typed, setTyped] = useState("");
  const [unit, setUnit] = useState<Unit>("oz");
  const save = useMutation({
    mutationFn: (row: Modifier) => answerOf(server.modifiers.$post({ json: [row] })),
    onSuccess: async () => {
      notify({ text: say("sales.modifierKnown", { modifier }) });
      onDone();
      await queryClient.invalidateQueries();
      focusIfLost();
    },
  });
  const number = readAmount(typed, { decimalComma: true }) ?? null;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    save.mutate({
      modifier,
      effect,
      item: effect === "none" ? null : item,
      with: effect === "swap" ? other : null,
      amount: effect === "add" ? number : null,
      unit: effect === "add" ? unit : null,
      factor: effect === "times" ? number : null,
    });
  };
  const items = (catalogue?.items ?? []).map(({ name, category }) => ({ value: name, detail: category }));
  const pick = (label: string, value: string | null, onChange: (picked: string | null) => void) => (
    <Combobox
      key={`${label} ${items.length === 0}`}
      label={label}
      choices={items}
      value={value}
      onChange={onChange}
    />
  );
  return (
    <form className="meaning" onSubmit={submit}>
      <div className="field-row">
        <Select
          label={say("sales.modifierNamed", { modifier })}
          options={EFFECTS.map(({ value, text }) => ({ value, label: say(text) }))}
          value={effect}
          onChange={(event) => setEffect(event.target.value as Effect)}
        />
        {effect === "none"
          ? null
          : pick(say(effect === "times" ? "sales.onlyItem" : "stock.item"), item, setItem)}
        {effect === "swap" ? pick(say("sales.takesInstead"), other, setOther) : null}
        {effect === "add" || effect === "times" ? (
          <Field
            label={say(effect === "add" ? "sales.amount" : "sales.times")}
            inputMode="decimal"
            value={typed}
            onChange={(event) => setTyped(event.target.value)}
          />
        ) : null}
        {effect === "add" ? (
          <Select
            label={say("stock.unit")}
            options={UNITS}
            value={unit}
            onChange={(event) => setUnit(event.target.value as Unit)}
          />
        ) : null}
      </div>
      <div className="preview-acts">
        <Button
          kind="main"
          type="submit"
          disabled={save.isPending || !isWhole({ effect, item, other, number })}
        >
          {say("sales.save")}
        </Button>
      </div>
      <Problems error={save.error} />
    </form>
  );
}

type Filled = { effect: Effect; item: string | null; other: string | null; number: number | null };

function isWhole({ effect, item, other, number }: Filled): boolean {
  switch (effect) {
    case "none":
      return true;
    case "swap":
      return item !== null && other !== null;
    case "remove":
      return item !== null;
    case "add":
      return item !== null && number !== null && number > 0;
    case "times":
      return number !== null && number >= 0;
  }
}
