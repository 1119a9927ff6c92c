import { type ReactNode, useState } from "react";
import { unitFactor } from "#engine/measure/unit-factor.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import { formatNumber } from "../format.ts";
import { Field, Select } from "../parts/Field.tsx";
import { useFocusFirst } from "../parts/use-focus-first.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { unitWord } from "./amounts.ts";
import { type CardSize, UNIT_WORD, WAYS, type Way } from "./card-size.ts";
import type { BatchCard } from "./prep-queries.ts";
import { typedAmount, typedIn } from "./typed-amount.ts";

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
    const amount = typedIn(typed, unit, venue);
    if (amount !== undefined && amount > 0) onSize({ way: "amount", make: amount });
  };
  const sizeByInput = (chosen: string, typed: string) => {
    setItem(chosen);
    setHave(typed);
    const amount = typedAmount(typed, inputs.find((input) => input.item === chosen)?.base ?? "g", venue);
    if (amount !== undefined && amount > 0) onSize({ way: "have", item: chosen, amount });
  };
  const isMakeUnread = make.trim() !== "" && typedIn(make, unit, venue) === undefined;
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
        <Asked>
          <Field
            label={say("prep.makeIn", { unit: unitWord(unit) })}
            className="wet-field"
            value={make}
            error={
              isMakeUnread
                ? say("prep.asAmount", { amount: exampleOf(unitFactor(unit, venue).base) })
                : undefined
            }
            onChange={(event) => sizeByAmount(event.target.value)}
          />
        </Asked>
      ) : null}
      {way === "have" ? (
        <Asked>
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
        </Asked>
      ) : null}
    </section>
  );
}

/** The fields that a key has opened; the first takes the focus. */
function Asked({ children }: { children: ReactNode }) {
  const place = useFocusFirst<HTMLDivElement>();
  return (
    <div ref={place} className="field-row">
      {children}
    </div>
  );
}

function exampleOf(base: BaseUnit): string {
  if (base === "each") return "14";
  return `${formatNumber(1.4, 1)} ${base === "g" ? "kg" : "l"}`;
}
