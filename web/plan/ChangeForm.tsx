import { useState } from "react";
import type { Change } from "#engine/demand/changed-book.ts";
import { Button } from "../parts/Button.tsx";
import { Combobox } from "../parts/Combobox.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { say } from "../texts/say.ts";

const KINDS = [
  { value: "party", text: "plan.kindParty" },
  { value: "closed", text: "plan.kindClosed" },
  { value: "menu-off", text: "plan.kindMenuOff" },
  { value: "menu-on", text: "plan.kindMenuOn" },
  { value: "price", text: "plan.kindPrice" },
] as const;
type Kind = (typeof KINDS)[number]["value"];

type Typed = {
  date: string;
  drink: string | null;
  guests: string;
  drinksEach: string;
  price: string;
  share: string;
};

type Props = { drinks: readonly string[]; from: string; onAdd: (change: Change) => void };

/** Puts one change together at a time. */
export function ChangeForm({ drinks, from, onAdd }: Props) {
  const [kind, setKind] = useState<Kind>("party");
  const [typed, setTyped] = useState<Typed>({
    date: from,
    drink: null,
    guests: "120",
    drinksEach: "3",
    price: "",
    share: "5",
  });
  const set = (part: Partial<Typed>) => setTyped({ ...typed, ...part });
  const change = changeOf(kind, typed);
  return (
    <form
      className="change-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (change !== null) onAdd(change);
      }}
    >
      <div className="field-row">
        <Select
          label={say("plan.whatIf")}
          options={KINDS.map(({ value, text }) => ({ value, label: say(text) }))}
          value={kind}
          onChange={(event) => setKind(event.target.value as Kind)}
        />
        {kind === "price" ? null : (
          <Field
            label={say(kind.startsWith("menu") ? "plan.from" : "plan.on")}
            type="date"
            value={typed.date}
            onChange={(event) => set({ date: event.target.value })}
          />
        )}
        {kind === "party" ? (
          <>
            <NumberField
              label={say("plan.guests")}
              value={typed.guests}
              onType={(guests) => set({ guests })}
            />
            <NumberField
              label={say("plan.drinksEach")}
              value={typed.drinksEach}
              onType={(drinksEach) => set({ drinksEach })}
            />
          </>
        ) : null}
        {kind === "party" || kind === "closed" ? null : (
          <Combobox
            label={say("plan.drink")}
            choices={drinks.map((value) => ({ value }))}
            value={typed.drink}
            onChange={(drink) => set({ drink })}
          />
        )}
        {kind === "price" ? (
          <NumberField label={say("plan.price")} value={typed.price} onType={(price) => set({ price })} />
        ) : null}
        {kind === "menu-on" ? (
          <NumberField label={say("plan.shareSold")} value={typed.share} onType={(share) => set({ share })} />
        ) : null}
        <Button type="submit" disabled={change === null}>
          {say("plan.add")}
        </Button>
      </div>
    </form>
  );
}

function NumberField({
  label,
  value,
  onType,
}: {
  label: string;
  value: string;
  onType: (value: string) => void;
}) {
  return (
    <Field
      label={label}
      inputMode="decimal"
      className="number-field"
      value={value}
      onChange={(event) => onType(event.target.value)}
    />
  );
}

/** The change as typed so far; null while something is missing or no number. */
export function changeOf(
  kind: Kind,
  { date, drink, guests, drinksEach, price, share }: Typed,
): Change | null {
  if (kind === "price") {
    const asked = numberOf(price);
    return drink === null || asked === null ? null : { kind, drink, price: asked };
  }
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) return null;
  if (kind === "closed") return { kind, date };
  if (kind === "party") {
    const [heads, each] = [numberOf(guests), numberOf(drinksEach)];
    return heads && each ? { kind, date, guests: heads, drinksEach: each, drinks: [] } : null;
  }
  if (drink === null) return null;
  if (kind === "menu-off") return { kind: "menu", from: date, off: [drink], on: [] };
  const percent = numberOf(share);
  if (percent === null || percent <= 0 || percent >= 100) return null;
  return { kind: "menu", from: date, off: [], on: [{ drink, share: percent / 100 }] };
}

/** A decimal comma is as good as a point. */
function numberOf(typed: string): number | null {
  const number = Number(typed.replace(",", "."));
  return typed.trim() === "" || !Number.isFinite(number) || number < 0 ? null : number;
}
