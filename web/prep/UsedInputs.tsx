import { useQuery } from "@tanstack/react-query";
import type { BaseUnit } from "#engine/measure/units.ts";
import { itemChoice } from "../book-words.ts";
import { formatNumber } from "../format.ts";
import { Combobox } from "../parts/Combobox.tsx";
import { Field } from "../parts/Field.tsx";
import { catalogueQuery } from "../queries.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { benchBase } from "./amounts.ts";
import { UNIT_WORD } from "./card-size.ts";
import { typedAmount } from "./typed-amount.ts";
import type { PlannedInput } from "./used-inputs.ts";

/** What was typed of an item, and the unit it is kept in. */
export type TypedInput = { text: string; base: BaseUnit };

type Props = {
  planned: readonly PlannedInput[];
  typed: ReadonlyMap<string, TypedInput>;
  onType: (item: string, typed: TypedInput) => void;
};

/** A field for what really went in of each input, empty where it went as planned. */
export function UsedInputs({ planned, typed, onType }: Props) {
  const added = [...typed].filter(([item]) => !planned.some((input) => input.item === item));
  const rows = [...planned, ...added.map(([item, { base }]) => ({ item, base, amount: 0 }))];
  return (
    <div className="field-row">
      {rows.map(({ item, base, amount }) => (
        <UsedField key={item} {...{ item, base, amount, onType }} text={typed.get(item)?.text ?? ""} />
      ))}
    </div>
  );
}

type FieldProps = PlannedInput & { text: string; onType: Props["onType"] };

/** Of fruit the card asks for so many pieces; what was really cut or pressed teaches it. */
export function UsedField({ item, base, amount, text, onType }: FieldProps) {
  const venue = useVenue();
  const isWrong = text.trim() !== "" && typedAmount(text, base, venue) === undefined;
  return (
    <Field
      label={say("prep.used", { item, unit: say(UNIT_WORD[base]) })}
      className="wet-field"
      value={text}
      placeholder={benchBase(amount, base)}
      error={isWrong ? say("prep.asAmount", { amount: exampleOf(base) }) : undefined}
      onChange={(event) => onType(item, { text: event.target.value, base })}
    />
  );
}

function exampleOf(base: BaseUnit): string {
  return base === "each" ? "42" : base === "g" ? `${formatNumber(1.1, 1)} kg` : "900";
}

/** Picks what went in that the card does not name: another sugar, another spirit. */
export function OtherInput({ prep, onType }: { prep: string; onType: Props["onType"] }) {
  const { data } = useQuery(catalogueQuery);
  const items = (data?.items ?? []).filter(({ name, stocked }) => stocked && name !== prep);
  return (
    <Combobox
      label={say("prep.notOnCard")}
      choices={items.map(itemChoice)}
      value={null}
      onChange={(name) => {
        const item = items.find((one) => one.name === name);
        if (item !== undefined) onType(item.name, { text: "", base: item.base });
      }}
    />
  );
}
