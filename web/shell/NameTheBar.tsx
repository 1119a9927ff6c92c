import { useMutation, useQueryClient } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import { answerOf, server } from "../api.ts";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { Problems } from "../parts/Problems.tsx";

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
        label="Name of the bar"
        required
        value={name}
        onChange={(event) => setName(event.target.value)}
      />
      <Field
        label="Currency"
        hint="Three letters, as EUR"
        required
        maxLength={3}
        value={currency}
        onChange={(event) => setCurrency(event.target.value.toUpperCase())}
      />
      <Field
        label="Time zone"
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
        label="Country"
        hint="Two letters, as PT, for its public holidays; may stay empty"
        maxLength={2}
        value={country}
        onChange={(event) => setCountry(event.target.value.toUpperCase())}
      />
      <Field
        label="The trading day ends at"
        hint="Sales before it belong to the evening"
        type="time"
        required
        value={dayEnds}
        onChange={(event) => setDayEnds(event.target.value)}
      />
      <Select
        label="An ounce in the specs is"
        options={[
          { value: "us", label: "US, 29.57 ml" },
          { value: "imperial", label: "imperial, 28.41 ml" },
        ]}
        value={oz}
        onChange={(event) => setOz(event.target.value === "us" ? "us" : "imperial")}
      />
      <Select
        label="Amounts are shown in"
        options={SHOWN}
        value={show}
        onChange={(event) => setShow(SHOWN.find((unit) => unit === event.target.value) ?? "ml")}
      />
      <Button kind="main" type="submit" disabled={save.isPending}>
        Open the book
      </Button>
      <Problems error={save.error} />
    </form>
  );
}

const SHOWN = ["ml", "cl", "oz"] as const;
