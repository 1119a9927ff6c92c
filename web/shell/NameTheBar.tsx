import { useMutation, useQueryClient } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import { answerOf, server } from "../api.ts";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { Problems } from "../parts/Problems.tsx";
import { say } from "../texts/say.ts";

/** The few facts without which no figure can be read: money, clock and measures. */
export function NameTheBar() {
  const queryClient = useQueryClient();
  const [name, setName] = useState("");
  const [currency, setCurrency] = useState("");
  const [timeZone, setTimeZone] = useState(() => Intl.DateTimeFormat().resolvedOptions().timeZone);
  const [country, setCountry] = useState("");
  const [dayEnds, setDayEnds] = useState("04:00");
  const [oz, setOz] = useState<"us" | "imperial">("us");
  const [show, setShow] = useState<"ml" | "cl" | "oz">("ml");
  const save = useMutation({
    mutationFn: () =>
      answerOf(
        server.venue.$post({
          json: {
            name: name.trim(),
            currency,
            timeZone,
            dayEnds,
            oz,
            show,
            ...(country === "" ? {} : { country }),
          },
        }),
      ),
    onSuccess: () => queryClient.invalidateQueries(),
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    save.mutate();
  };
  return (
    <form className="name-the-bar" onSubmit={submit}>
      <Field
        label={say("people.barName")}
        required
        value={name}
        onChange={(event) => setName(event.target.value)}
      />
      <Field
        label={say("people.currency")}
        hint={say("people.currencyHint")}
        required
        maxLength={3}
        value={currency}
        onChange={(event) => setCurrency(event.target.value.toUpperCase())}
      />
      <Field
        label={say("people.timeZone")}
        list="time-zones"
        required
        value={timeZone}
        onChange={(event) => setTimeZone(event.target.value)}
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
        onChange={(event) => setCountry(event.target.value.toUpperCase())}
      />
      <Field
        label={say("people.dayEnds")}
        hint={say("people.dayEndsHint")}
        type="time"
        required
        value={dayEnds}
        onChange={(event) => setDayEnds(event.target.value)}
      />
      <Select
        label={say("people.ounce")}
        options={[
          { value: "us", label: say("people.ounceUs") },
          { value: "imperial", label: say("people.ounceImperial") },
        ]}
        value={oz}
        onChange={(event) => setOz(event.target.value === "us" ? "us" : "imperial")}
      />
      <Select
        label={say("people.amountsIn")}
        options={SHOWN}
        value={show}
        onChange={(event) => setShow(SHOWN.find((unit) => unit === event.target.value) ?? "ml")}
      />
      <Button kind="main" type="submit" disabled={save.isPending}>
        {say("people.openBook")}
      </Button>
      <Problems error={save.error} />
    </form>
  );
}

const SHOWN = ["ml", "cl", "oz"] as const;
