import { useMutation, useQueryClient } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import type { Supplier, SupplierDay } from "#engine/orders/supplier.ts";
import { WEEKDAYS, type Weekday } from "#engine/time.ts";
import { answerOf, server } from "../api.ts";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useFocusFirst } from "../parts/use-focus-first.ts";
import { say } from "../texts/say.ts";
import { weekdayName } from "./weekday-name.ts";

type Day = Omit<SupplierDay, "supplier">;
type Props = { supplier: Supplier | null; days: readonly SupplierDay[]; onClose: () => void };

/** A first guess that is seen and changed before it is saved. */
const FIRST_DAY: Day = {
  ...{ orderDay: WEEKDAYS[0], orderBy: "15:00" },
  ...{ deliveryDay: WEEKDAYS[2], deliveryAt: "11:00" },
};

/** A supplier's name, and until when an order reaches which delivery. */
export function SupplierForm({ supplier, days: known, onClose }: Props) {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const form = useFocusFirst<HTMLFormElement>();
  const [typed, setTyped] = useState("");
  const [days, setDays] = useState<readonly Day[]>(() =>
    known.length === 0 ? [FIRST_DAY] : known.map(({ supplier: _, ...day }) => day),
  );
  const name = supplier?.name ?? typed.trim();
  const save = useMutation({
    mutationFn: () => {
      const facts = supplier ?? { name, email: "", minimumValueMinor: null, minimumCases: null };
      return answerOf(server.suppliers.$post({ json: { ...facts, days: [...days] } }));
    },
    onSuccess: async () => {
      notify({ text: say("prices.supplierSaved", { supplier: name }) });
      await queryClient.invalidateQueries();
      onClose();
    },
  });
  const change = (at: number, part: Partial<Day>) =>
    setDays(days.map((day, index) => (index === at ? { ...day, ...part } : day)));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    save.mutate();
  };
  return (
    <form ref={form} className="supplier-form" onSubmit={submit}>
      {supplier === null ? (
        <Field
          label={say("prices.supplierName")}
          required
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
        />
      ) : null}
      {days.map((day, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a day has no other name, and its fields hold no state of their own
        <div key={at} className="field-row">
          <DaySelect
            label={say("prices.orderOn")}
            value={day.orderDay}
            onPick={(orderDay) => change(at, { orderDay })}
          />
          <Field
            label={say("prices.until")}
            type="time"
            required
            value={day.orderBy}
            onChange={(event) => change(at, { orderBy: event.target.value })}
          />
          <DaySelect
            label={say("prices.arrivesOn")}
            value={day.deliveryDay}
            onPick={(deliveryDay) => change(at, { deliveryDay })}
          />
          <Field
            label={say("prices.at")}
            type="time"
            required
            value={day.deliveryAt}
            onChange={(event) => change(at, { deliveryAt: event.target.value })}
          />
          <Button kind="quiet" onClick={() => setDays(days.filter((_, index) => index !== at))}>
            {say("prices.removeDay")}
          </Button>
        </div>
      ))}
      <div className="prices-act">
        <Button onClick={() => setDays([...days, days.at(-1) ?? FIRST_DAY])}>{say("prices.addDay")}</Button>
        <Button kind="main" type="submit" disabled={name === ""} isBusy={save.isPending}>
          {say("prices.saveSupplier")}
        </Button>
        <Button kind="quiet" onClick={onClose}>
          {say("prices.leaveSupplier")}
        </Button>
      </div>
      <Problems error={save.error} />
    </form>
  );
}

type DaySelectProps = { label: string; value: Weekday; onPick: (day: Weekday) => void };

function DaySelect({ label, value, onPick }: DaySelectProps) {
  return (
    <Select
      label={label}
      value={value}
      options={WEEKDAYS.map((day) => ({ value: day, label: weekdayName(day) }))}
      onChange={(event) => onPick(WEEKDAYS.find((day) => day === event.target.value) ?? value)}
    />
  );
}
