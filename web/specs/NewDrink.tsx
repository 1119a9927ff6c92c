import { useMutation, useQueryClient } from "@tanstack/react-query";
import { useNavigate } from "@tanstack/react-router";
import { type FormEvent, useState } from "react";
import { currencyDigits } from "#engine/currency.ts";
import { readAmount } from "#engine/measure/amount.ts";
import type { Drink } from "#engine/specs/spec.ts";
import { answerOf, server } from "../api.ts";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useFocusFirst } from "../parts/use-focus-first.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";

/** Names a new drink; its spec is written on its own page. */
export function NewDrink() {
  const venue = useVenue();
  const navigate = useNavigate();
  const queryClient = useQueryClient();
  const form = useFocusFirst<HTMLFormElement>();
  const [typed, setTyped] = useState("");
  const [price, setPrice] = useState("");
  const name = typed.trim();
  const major = price.trim() === "" ? null : readAmount(price, { decimalComma: true });
  const save = useMutation({
    mutationFn: async () => {
      const priceMinor = major == null ? null : Math.round(major * 10 ** currencyDigits(venue.currency));
      await answerOf(server.drinks.$post({ json: newDrink(name, priceMinor) }));
    },
    onSuccess: async () => {
      await queryClient.invalidateQueries();
      await navigate({ to: "/specs/$name", params: { name } });
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    save.mutate();
  };
  return (
    <form ref={form} className="new-spec" onSubmit={submit}>
      <div className="field-row">
        <Field
          label={say("specs.name")}
          required
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
        />
        <Field
          label={say("specs.priceIn", { currency: venue.currency })}
          inputMode="decimal"
          value={price}
          error={major === undefined ? say("specs.priceError") : undefined}
          onChange={(event) => setPrice(event.target.value)}
        />
        <Button kind="main" type="submit" disabled={name === "" || major === undefined || save.isPending}>
          {say("specs.writeSpec")}
        </Button>
      </div>
      <Problems error={save.error} />
    </form>
  );
}

function newDrink(name: string, priceMinor: number | null): Drink {
  return {
    name,
    priceMinor,
    glass: "",
    glassMl: null,
    ice: null,
    technique: null,
    garnishNote: "",
    method: "",
    allergens: [],
    onMenuFrom: null,
    onMenuUntil: null,
  };
}
