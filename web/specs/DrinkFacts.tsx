import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import { currencyDigits } from "#engine/currency.ts";
import { readAmount } from "#engine/measure/amount.ts";
import type { DrinkAlcohol } from "#engine/specs/drink-alcohol.ts";
import type { DrinkStrength } from "#engine/specs/drink-strength.ts";
import { type Drink, ICES, TECHNIQUES } from "#engine/specs/spec.ts";
import { answerOf, server } from "../api.ts";
import { formatDate, formatMoney, formatNumber, listWords } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useFocusFirst } from "../parts/use-focus-first.ts";
import { useMay } from "../people/signed-in.ts";
import { useVenue } from "../shell/venue.tsx";
import { costQuery } from "./spec-queries.ts";

/** Price, glass and cost of a drink, to read and to change. */
export function DrinkFacts({ drink }: { drink: Drink }) {
  const { currency } = useVenue();
  const seesCosts = useMay("seeCosts");
  const runsBar = useMay("runBar");
  const { data: cost } = useQuery({ ...costQuery, enabled: seesCosts });
  const [isEditing, setEditing] = useState(false);
  const own = cost?.drinks.find((row) => row.drink === drink.name);
  const price = drink.priceMinor === null ? null : drink.priceMinor / 10 ** currencyDigits(currency);
  const money = [
    ["Price", price === null ? "none" : formatMoney(price, currency)],
    ["Cost", own?.cost == null ? "not known" : formatMoney(own.cost, currency)],
    ["Cost of price", own?.costPct == null ? "" : `${formatNumber(own.costPct, 1)}%`],
    ["Leaves", own?.contribution == null ? "" : formatMoney(own.contribution, currency)],
  ];
  const facts = [
    ...(seesCosts ? money : []),
    ["Glass", [drink.glass, drink.glassMl === null ? "" : `${drink.glassMl} ml`].filter(Boolean).join(", ")],
    ["Ice", drink.ice ?? ""],
    ["Technique", drink.technique ?? ""],
    ["Garnish", drink.garnishNote],
    ["Method", drink.method],
    ["On the menu", menuWords(drink)],
    ["Strength", strengthWords(own?.strength ?? null)],
    ["Alcohol", alcoholWords(own?.alcohol ?? null)],
  ].filter(([, words]) => words !== "");
  return (
    <section>
      <h2>Facts</h2>
      {isEditing ? (
        <DrinkForm drink={drink} onDone={() => setEditing(false)} />
      ) : (
        <>
          <dl className="facts">
            {facts.map(([name, words]) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>{words}</dd>
              </div>
            ))}
          </dl>
          {own !== undefined && own.unpriced.length > 0 ? (
            <p className="soft">No price is known of {own.unpriced.join(", ")}.</p>
          ) : null}
          {runsBar ? <Button onClick={() => setEditing(true)}>Change the facts</Button> : null}
        </>
      )}
    </section>
  );
}

/** By what the book knows of its parts; what ice adds follows the published fits. */
function strengthWords(strength: DrinkStrength | null): string {
  if (strength === null) return "";
  const { abvPct, volumeMl, iced } = strength;
  const before = `${formatNumber(abvPct, 0)} % vol in ${formatNumber(volumeMl, 0)} ml as poured`;
  if (iced === null) return before;
  const after = `about ${formatNumber(iced.abvPct, 0)} % in ${formatNumber(iced.volumeMl, 0)} ml once ${iced.technique}`;
  return `${before}, ${after}. Batched without ice: ${formatNumber(iced.waterGPerL, 0)} g water to the litre`;
}

/** For information, in the words of public guidance on either side of the ocean. */
function alcoholWords(alcohol: DrinkAlcohol | null): string {
  if (alcohol === null || alcohol.ethanolMl === 0) return "";
  const { ethanolG, usDrinks, ukUnits, unknown } = alcohol;
  const least =
    unknown.length === 0 ? "About" : `At least, as no strength is known of ${listWords(unknown)},`;
  return `${least} ${formatNumber(ethanolG, 0)} g: ${formatNumber(usDrinks, 1)} US standard drinks, ${formatNumber(ukUnits, 1)} UK units`;
}

function menuWords({ onMenuFrom, onMenuUntil }: Drink): string {
  const from = onMenuFrom === null ? "" : `from ${formatDate(onMenuFrom)}`;
  const until = onMenuUntil === null ? "" : `until ${formatDate(onMenuUntil)}`;
  return [from, until].filter(Boolean).join(" ");
}

function DrinkForm({ drink, onDone }: { drink: Drink; onDone: () => void }) {
  const { currency } = useVenue();
  const queryClient = useQueryClient();
  const notify = useNotify();
  const digits = currencyDigits(currency);
  const place = useFocusFirst<HTMLFormElement>();
  const [changed, setChanged] = useState(drink);
  const [price, setPrice] = useState(
    drink.priceMinor === null ? "" : String(drink.priceMinor / 10 ** digits),
  );
  const [glassMl, setGlassMl] = useState(drink.glassMl === null ? "" : String(drink.glassMl));
  const [allergens, setAllergens] = useState(drink.allergens.join("; "));
  const major = numberOrNull(price);
  const size = numberOrNull(glassMl);
  const save = useMutation({
    mutationFn: (written: Drink) => answerOf(server.drinks.$post({ json: written })),
    onSuccess: async () => {
      notify({ text: `${drink.name} is saved.` });
      onDone();
      await queryClient.invalidateQueries();
    },
  });
  const isWrong = major === undefined || size === undefined || (size !== null && size <= 0);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (isWrong) return;
    const names = allergens.split(/[;,]/).map((name) => name.trim());
    save.mutate({
      ...changed,
      priceMinor: major === null ? null : Math.round(major * 10 ** digits),
      glassMl: size,
      allergens: names.filter(Boolean),
    });
  };
  const set = (part: Partial<Drink>) => setChanged({ ...changed, ...part });
  return (
    <form ref={place} className="facts-form" onSubmit={submit}>
      <Field
        label={`Price, ${currency}`}
        inputMode="decimal"
        value={price}
        error={major === undefined ? "a number, as 12.50" : undefined}
        onChange={(event) => setPrice(event.target.value)}
      />
      <Field label="Glass" value={changed.glass} onChange={(event) => set({ glass: event.target.value })} />
      <Field
        label="Glass holds, ml"
        inputMode="decimal"
        value={glassMl}
        error={size === undefined ? "a number, as 165" : undefined}
        onChange={(event) => setGlassMl(event.target.value)}
      />
      <Select
        label="Ice"
        options={["", ...ICES]}
        value={changed.ice ?? ""}
        onChange={(event) => set({ ice: (event.target.value || null) as Drink["ice"] })}
      />
      <Select
        label="Technique"
        options={["", ...TECHNIQUES]}
        value={changed.technique ?? ""}
        onChange={(event) => set({ technique: (event.target.value || null) as Drink["technique"] })}
      />
      <Field
        label="Garnish"
        value={changed.garnishNote}
        onChange={(event) => set({ garnishNote: event.target.value })}
      />
      <Field
        label="Method"
        value={changed.method}
        onChange={(event) => set({ method: event.target.value })}
      />
      <Field
        label="Allergens of its own"
        hint="With ; between. Those of its ingredients come by themselves."
        value={allergens}
        onChange={(event) => setAllergens(event.target.value)}
      />
      <Field
        label="On the menu from"
        type="date"
        value={changed.onMenuFrom ?? ""}
        onChange={(event) => set({ onMenuFrom: event.target.value || null })}
      />
      <Field
        label="On the menu until"
        type="date"
        value={changed.onMenuUntil ?? ""}
        onChange={(event) => set({ onMenuUntil: event.target.value || null })}
      />
      <Problems error={save.error} />
      <div className="facts-acts">
        <Button kind="main" type="submit" disabled={isWrong || save.isPending}>
          Save the facts
        </Button>
        <Button onClick={onDone}>Leave them</Button>
      </div>
    </form>
  );
}

/** A typed number; null when nothing is typed, undefined when it is no number. */
export function numberOrNull(typed: string): number | null | undefined {
  return typed.trim() === "" ? null : readAmount(typed, { decimalComma: true });
}
