import { useMutation, useQueryClient } from "@tanstack/react-query";
import { useNavigate } from "@tanstack/react-router";
import { type FormEvent, useState } from "react";
import { currencyDigits } from "#engine/currency.ts";
import { readAmount } from "#engine/measure/amount.ts";
import type { Drink } from "#engine/specs/spec.ts";
import type { Item } from "#engine/stock/item.ts";
import { answerOf, server } from "../api.ts";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useVenue } from "../shell/venue.tsx";

type Kind = "drink" | "ml" | "g" | "each";

const KINDS: { value: Kind; label: string }[] = [
  { value: "drink", label: "a drink on the menu" },
  { value: "ml", label: "a prep kept in ml" },
  { value: "g", label: "a prep kept in g" },
  { value: "each", label: "a prep counted in pieces" },
];

/** Names a new drink or prep; its spec is written on its own page. */
export function NewSpec() {
  const venue = useVenue();
  const navigate = useNavigate();
  const queryClient = useQueryClient();
  const [kind, setKind] = useState<Kind>("drink");
  const [typed, setTyped] = useState("");
  const [price, setPrice] = useState("");
  const name = typed.trim();
  const major = price.trim() === "" ? null : readAmount(price, { decimalComma: true });
  const save = useMutation({
    mutationFn: async () => {
      const priceMinor = major == null ? null : Math.round(major * 10 ** currencyDigits(venue.currency));
      if (kind === "drink") await answerOf(server.drinks.$post({ json: newDrink(name, priceMinor) }));
      else await answerOf(server.items.$post({ json: newPrep(name, kind) }));
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
    <form className="new-spec" onSubmit={submit}>
      <div className="field-row">
        <Field label="Name" required value={typed} onChange={(event) => setTyped(event.target.value)} />
        <Select
          label="It is"
          options={KINDS}
          value={kind}
          onChange={(event) => setKind(event.target.value as Kind)}
        />
        {kind === "drink" ? (
          <Field
            label={`Price, ${venue.currency}`}
            inputMode="decimal"
            value={price}
            error={major === undefined ? "a number, as 12.50" : undefined}
            onChange={(event) => setPrice(event.target.value)}
          />
        ) : null}
        <Button kind="main" type="submit" disabled={name === "" || major === undefined || save.isPending}>
          Write its spec
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

/** An item made in house of which nothing more is known yet. */
export function newPrep(name: string, base: Item["base"]): Item {
  return {
    name,
    category: "prep",
    base,
    abv: null,
    brix: null,
    densityGPerMl: null,
    pieceG: null,
    shelfLifeDays: null,
    allergens: [],
    inHouse: true,
    stocked: true,
    pour: "measured",
    serviceLevel: null,
    note: "",
  };
}
