import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { readAmount } from "#engine/measure/amount.ts";
import { type BaseUnit, UNITS, type Unit } from "#engine/measure/units.ts";
import type { CatalogueAnswer } from "../answers.ts";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { useDeviceSetting } from "../parts/use-device-setting.ts";
import { ownName } from "../people/own-name.ts";
import { useSignedIn } from "../people/signed-in.ts";
import { catalogueQuery } from "../queries.ts";
import { say } from "../texts/say.ts";

/** The book's catalogue. The page draws its forms only once it is there. */
export function useCatalogue(): CatalogueAnswer {
  const { data } = useQuery(catalogueQuery);
  if (data === undefined) throw new Error("A form of the movements is drawn before the catalogue has come.");
  return data;
}

/** A typed amount above nothing; undefined for anything else. */
export function amountOf(typed: string): number | undefined {
  const read = readAmount(typed, { decimalComma: true });
  return read !== undefined && read > 0 ? read : undefined;
}

export function MomentField({ value, onChange }: { value: string; onChange: (local: string) => void }) {
  return (
    <Field
      label={say("movements.moment")}
      type="datetime-local"
      required
      value={value}
      onChange={(event) => onChange(event.target.value)}
    />
  );
}

/** Who entered it: of an entry what it says, else whom the one signed in named last on this device, else that one. */
export function useEnteredBy(entered: string | undefined): [string, (by: string) => void] {
  const me = ownName(useSignedIn());
  const [last, setLast] = useDeviceSetting(`entered-by ${me}`.trim(), me);
  const [by, setBy] = useState(entered ?? last);
  const name = (typed: string) => {
    setBy(typed);
    // A correction names whoever it was then; that is no word about who holds this device now.
    if (entered === undefined) setLast(typed);
  };
  return [by, name];
}

export function ByField({ value, onChange }: { value: string; onChange: (by: string) => void }) {
  return (
    <Field
      label={say("movements.enteredBy")}
      className="short-field"
      value={value}
      onChange={(event) => onChange(event.target.value)}
    />
  );
}

type AmountProps = {
  amount: string;
  unit: Unit;
  base: BaseUnit | undefined;
  onAmount: (typed: string) => void;
  onUnit: (unit: Unit) => void;
};

const UNITS_OF: Record<BaseUnit, readonly Unit[]> = {
  ml: ["ml", "oz", "cl", "dl", "l"],
  g: ["g", "kg", "oz-wt", "lb"],
  each: ["each"],
};

/** An amount with a unit that its item can be measured in. */
export function AmountFields({ amount, unit, base, onAmount, onUnit }: AmountProps) {
  const own = base === undefined ? UNITS : UNITS_OF[base];
  return (
    <>
      <Field
        label={say("movements.amount")}
        inputMode="decimal"
        className="short-field"
        required
        value={amount}
        error={
          amount.trim() !== "" && amountOf(amount) === undefined ? say("movements.aboveZero") : undefined
        }
        onChange={(event) => onAmount(event.target.value)}
      />
      <Select
        label={say("stock.unit")}
        className="short-field"
        options={own.includes(unit) ? own : [unit, ...own]}
        value={unit}
        onChange={(event) => onUnit(event.target.value as Unit)}
      />
    </>
  );
}

type ActsProps = { act: string; isReady: boolean; isBusy: boolean; onLeave: () => void };

export function FormActs({ act, isReady, isBusy, onLeave }: ActsProps) {
  return (
    <div className="form-acts">
      <Button kind="main" type="submit" disabled={!isReady} isBusy={isBusy}>
        {act}
      </Button>
      <Button onClick={onLeave}>{say("movements.leave")}</Button>
    </div>
  );
}
