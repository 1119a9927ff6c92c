import { useState } from "react";
import { readAmount } from "#engine/measure/amount.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import { formatNumber } from "../format.ts";
import { Field, Select } from "../parts/Field.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { unitWord } from "./amounts.ts";
import { type CardSize, UNIT_WORD, WAYS, type Way } from "./card-size.ts";
import type { BatchCard } from "./prep-queries.ts";
import { typedAmount } from "./typed-amount.ts";

type Props = { card: BatchCard; onSize: (size: CardSize) => void };

/** Keys to scale a card by: the plan's amount, another, what there is of one input, or the vessel. */
export function HowMuch({ card: { unit, inputs }, onSize }: Props) {
  const venue = useVenue();
  const [way, setWay] = useState<Way>("planned");
  const [make, setMake] = useState("");
  const [item, setItem] = useState(inputs[0]?.item ?? "");
  const [have, setHave] = useState("");
  const base = inputs.find((input) => input.item === item)?.base ?? "g";
  const press = (pressed: Way) => {
    setWay(pressed);
    if (pressed === "vessel" || pressed === "planned") onSize({ way: pressed });
  };
  const sizeByAmount = (typed: string) => {
    setMake(typed);
    const amount = readAmount(typed, { decimalComma: true });
    if (amount !== undefined && amount > 0) onSize({ way: "amount", make: amount });
  };
  const sizeByInput = (chosen: string, typed: string) => {
    setItem(chosen);
    setHave(typed);
    const amount = typedAmount(typed, inputs.find((input) => input.item === chosen)?.base ?? "g", venue);
    if (amount !== undefined && amount > 0) onSize({ way: "have", item: chosen, amount });
  };
  const isUnread = have.trim() !== "" && typedAmount(have, base, venue) === undefined;
  return (
    <section className="how-much no-print" aria-label={say("prep.howMuch")}>
      <div className="wet-keys">
        {WAYS.map(({ way: one, text }) => (
          <button
            key={one}
            type="button"
            className="button wet-key"
            aria-pressed={way === one}
            onClick={() => press(one)}
          >
            {say(text)}
          </button>
        ))}
      </div>
      {way === "amount" ? (
        <Field
          label={say("prep.makeIn", { unit: unitWord(unit) })}
          inputMode="decimal"
          className="wet-field"
          value={make}
          onChange={(event) => sizeByAmount(event.target.value)}
        />
      ) : null}
      {way === "have" ? (
        <div className="field-row">
          <Select
            label={say("prep.have")}
            className="wet-field"
            options={inputs.map((input) => input.item)}
            value={item}
            onChange={(event) => sizeByInput(event.target.value, "")}
          />
          <Field
            label={say("prep.haveOfIt", { unit: say(UNIT_WORD[base]) })}
            className="wet-field"
            value={have}
            error={isUnread ? say("prep.asAmount", { amount: exampleOf(base) }) : undefined}
            onChange={(event) => sizeByInput(item, event.target.value)}
          />
        </div>
      ) : null}
    </section>
  );
}

function exampleOf(base: BaseUnit): string {
  return `${formatNumber(1.4, 1)} ${base === "g" ? "kg" : base === "ml" ? "l" : ""}`.trim();
}
