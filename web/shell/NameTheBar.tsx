import { useMutation, useQueryClient } from "@tanstack/react-query";
import { type FormEvent, useEffect, useRef, useState } from "react";
import { answerOf, server } from "../api.ts";
import { keep, kept } from "../kept.ts";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { Problems, problemOfField } from "../parts/Problems.tsx";
import { say } from "../texts/say.ts";

/** What is typed stays in this window until the book is open, as a reload must not lose it. */
const KEPT = "ullage-new-venue";

type NewVenue = {
  name: string;
  currency: string;
  timeZone: string;
  country: string;
  dayEnds: string;
  oz: "us" | "imperial";
  show: "ml" | "cl" | "oz";
};

function begun(): NewVenue {
  const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
  const fresh: NewVenue = {
    name: "",
    currency: "",
    timeZone,
    country: "",
    dayEnds: "04:00",
    oz: "us",
    show: "ml",
  };
  return { ...fresh, ...kept<Partial<NewVenue>>(KEPT, sessionStorage) };
}

/** The few facts without which no figure can be read: money, clock and measures. */
export function NameTheBar() {
  const queryClient = useQueryClient();
  const form = useRef<HTMLFormElement>(null);
  const [venue, setVenue] = useState(begun);
  const { name, currency, timeZone, country, dayEnds, oz, show } = venue;
  const change = (part: Partial<NewVenue>) => {
    const changed = { ...venue, ...part };
    keep(KEPT, changed, sessionStorage);
    setVenue(changed);
  };
  const save = useMutation({
    mutationFn: () => {
      const { country: _, ...rest } = { ...venue, name: name.trim() };
      return answerOf(server.venue.$post({ json: country === "" ? rest : { ...rest, country } }));
    },
    onSuccess: async () => {
      sessionStorage.removeItem(KEPT);
      await queryClient.invalidateQueries();
    },
  });
  const wrong = (field: keyof NewVenue) => problemOfField(save.error, field);
  const isBeside = FIELDS.some((field) => wrong(field) !== undefined);
  useEffect(() => {
    if (save.error !== null) form.current?.querySelector<HTMLElement>("[aria-invalid=true]")?.focus();
  }, [save.error]);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    save.mutate();
  };
  return (
    <form ref={form} className="name-the-bar" onSubmit={submit}>
      <Field
        label={say("people.barName")}
        required
        value={name}
        error={wrong("name")}
        onChange={(event) => change({ name: event.target.value })}
      />
      <Field
        label={say("people.currency")}
        hint={say("people.currencyHint")}
        required
        maxLength={3}
        value={currency}
        error={wrong("currency")}
        onChange={(event) => change({ currency: event.target.value.toUpperCase() })}
      />
      <Field
        label={say("people.timeZone")}
        list="time-zones"
        required
        value={timeZone}
        error={wrong("timeZone")}
        onChange={(event) => change({ timeZone: event.target.value })}
      />
      <datalist id="time-zones">
        {Intl.supportedValuesOf("timeZone").map((zone) => (
          <option key={zone} value={zone} />
        ))}
      </datalist>
      <Field
        label={say("people.country")}
        hint={say("people.countryHint")}
        maxLength={2}
        value={country}
        error={wrong("country")}
        onChange={(event) => change({ country: event.target.value.toUpperCase() })}
      />
      <Field
        label={say("people.dayEnds")}
        hint={say("people.dayEndsHint")}
        type="time"
        required
        value={dayEnds}
        error={wrong("dayEnds")}
        onChange={(event) => change({ dayEnds: event.target.value })}
      />
      <Select
        label={say("people.ounce")}
        options={[
          { value: "us", label: say("people.ounceUs") },
          { value: "imperial", label: say("people.ounceImperial") },
        ]}
        value={oz}
        onChange={(event) => change({ oz: event.target.value === "us" ? "us" : "imperial" })}
      />
      <Select
        label={say("people.amountsIn")}
        options={SHOWN}
        value={show}
        onChange={(event) => change({ show: SHOWN.find((unit) => unit === event.target.value) ?? "ml" })}
      />
      <Button kind="main" type="submit" disabled={save.isPending}>
        {say("people.openBook")}
      </Button>
      {isBeside ? null : <Problems error={save.error} />}
    </form>
  );
}

const SHOWN = ["ml", "cl", "oz"] as const;

/** The fields that say beside themselves what is wrong. */
const FIELDS = ["name", "currency", "timeZone", "country", "dayEnds"] as const;
