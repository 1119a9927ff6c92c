import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import { currencyDigits } from "#engine/currency.ts";
import { readAmount } from "#engine/measure/amount.ts";
import type { DrinkAlcohol } from "#engine/specs/drink-alcohol.ts";
import type { DrinkStrength } from "#engine/specs/drink-strength.ts";
import type { OddPour } from "#engine/specs/glass-pours.ts";
import { type Drink, ICES, TECHNIQUES } from "#engine/specs/spec.ts";
import { answerOf, server } from "../api.ts";
import { shownWord, wordForBook } from "../book-words.ts";
import { formatDate, formatNumber, listWords, withUnit } from "../format.ts";
import { formatMoney } from "../money.ts";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useFocusFirst } from "../parts/use-focus-first.ts";
import { useMay } from "../people/signed-in.ts";
import { plainNumber } from "../prep/amounts.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
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
    [say("specs.price"), price === null ? say("specs.none") : formatMoney(price, currency)],
    [say("specs.cost"), own?.cost == null ? say("parts.notKnown") : formatMoney(own.cost, currency)],
    [
      say("specs.costOfPrice"),
      own?.costPct == null ? "" : say("specs.percent", { number: formatNumber(own.costPct, 1) }),
    ],
    [say("specs.leaves"), own?.contribution == null ? "" : formatMoney(own.contribution, currency)],
  ];
  const facts = [
    ...(seesCosts ? money : []),
    [say("specs.glass"), glassWords(drink)],
    [say("specs.ice"), drink.ice === null ? "" : say("specs.iceIs", { ice: drink.ice })],
    [say("specs.technique"), drink.technique === null ? "" : techniqueWord(drink.technique)],
    [say("specs.garnish"), drink.garnishNote],
    [say("specs.method"), drink.method],
    [say("specs.onMenu"), menuWords(drink)],
    [say("specs.strength"), strengthWords(own?.strength ?? null)],
    [say("specs.alcohol"), alcoholWords(own?.alcohol ?? null)],
    [say("specs.byTheGlass"), (own?.oddPours ?? []).map(oddPourWords).join(" ")],
  ].filter(([, words]) => words !== "");
  return (
    <section>
      <h2>{say("specs.facts")}</h2>
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
            <p className="soft">{say("specs.noPriceOf", { items: own.unpriced.join(", ") })}</p>
          ) : null}
          {runsBar ? <Button onClick={() => setEditing(true)}>{say("specs.changeFacts")}</Button> : null}
        </>
      )}
    </section>
  );
}

function glassWords({ glass, glassMl }: Drink): string {
  return [glass, glassMl === null ? "" : withUnit(plainNumber(glassMl), "ml")].filter(Boolean).join(", ");
}

function techniqueWord(technique: NonNullable<Drink["technique"]>): string {
  return say("specs.techniqueIs", { technique });
}

/** By what the book knows of its parts; what ice adds follows the published fits. */
function strengthWords(strength: DrinkStrength | null): string {
  if (strength === null) return "";
  const { abvPct, volumeMl, iced } = strength;
  const poured = { abv: formatNumber(abvPct), volume: formatNumber(volumeMl) };
  if (iced === null) return say("specs.strengthPoured", poured);
  return say("specs.strengthIced", {
    ...poured,
    icedAbv: formatNumber(iced.abvPct),
    icedVolume: formatNumber(iced.volumeMl),
    technique: techniqueWord(iced.technique),
    water: formatNumber(iced.waterGPerL),
  });
}

/** For information, in the words of public guidance on either side of the ocean. */
function alcoholWords(alcohol: DrinkAlcohol | null): string {
  if (alcohol === null || alcohol.ethanolMl === 0) return "";
  const { ethanolG, usDrinks, ukUnits, unknown } = alcohol;
  const figures = {
    grams: formatNumber(ethanolG),
    us: formatNumber(usDrinks, 1),
    uk: formatNumber(ukUnits, 1),
  };
  return unknown.length === 0
    ? say("specs.alcoholAbout", figures)
    : say("specs.alcoholLeast", { ...figures, unknown: listWords(unknown) });
}

/** A mild notice: what the law of the venue's country knows no measure of. */
function oddPourWords({ item, ml, lawfulMl }: OddPour): string {
  const lawful = lawfulMl.map((measure) => formatNumber(measure)).join(" / ");
  return say("specs.oddPour", { item, ml: formatNumber(ml), lawful });
}

function menuWords({ onMenuFrom, onMenuUntil }: Drink): string {
  const from = onMenuFrom === null ? "" : formatDate(onMenuFrom);
  const until = onMenuUntil === null ? "" : formatDate(onMenuUntil);
  if (from !== "" && until !== "") return say("specs.menuFromUntil", { from, until });
  if (from !== "") return say("specs.menuFrom", { from });
  return until === "" ? "" : say("specs.menuUntil", { until });
}

function DrinkForm({ drink, onDone }: { drink: Drink; onDone: () => void }) {
  const { currency } = useVenue();
  const queryClient = useQueryClient();
  const notify = useNotify();
  const digits = currencyDigits(currency);
  const place = useFocusFirst<HTMLFormElement>();
  const [changed, setChanged] = useState(drink);
  const [price, setPrice] = useState(
    drink.priceMinor === null ? "" : plainNumber(drink.priceMinor / 10 ** digits),
  );
  const [glassMl, setGlassMl] = useState(drink.glassMl === null ? "" : plainNumber(drink.glassMl));
  const [allergens, setAllergens] = useState(() =>
    drink.allergens.map((allergen) => shownWord("allergen", allergen)).join("; "),
  );
  const major = numberOrNull(price);
  const size = numberOrNull(glassMl);
  const save = useMutation({
    mutationFn: (written: Drink) => answerOf(server.drinks.$post({ json: written })),
    onSuccess: async () => {
      notify({ text: say("specs.saved", { drink: drink.name }) });
      onDone();
      await queryClient.invalidateQueries();
    },
  });
  const isWrong = major === undefined || size === undefined || (size !== null && size <= 0);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (isWrong) return;
    const names = allergens.split(/[;,]/).map((name) => wordForBook("allergen", name, drink.allergens));
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
        label={say("specs.priceIn", { currency })}
        inputMode="decimal"
        value={price}
        error={major === undefined ? say("specs.priceError") : undefined}
        onChange={(event) => setPrice(event.target.value)}
      />
      <Field
        label={say("specs.glass")}
        value={changed.glass}
        onChange={(event) => set({ glass: event.target.value })}
      />
      <Field
        label={say("specs.glassHolds")}
        inputMode="decimal"
        value={glassMl}
        error={size === undefined ? say("specs.glassError") : undefined}
        onChange={(event) => setGlassMl(event.target.value)}
      />
      <Select
        label={say("specs.ice")}
        options={["", ...ICES.map((ice) => ({ value: ice, label: say("specs.iceIs", { ice }) }))]}
        value={changed.ice ?? ""}
        onChange={(event) => set({ ice: (event.target.value || null) as Drink["ice"] })}
      />
      <Select
        label={say("specs.technique")}
        options={["", ...TECHNIQUES.map((value) => ({ value, label: techniqueWord(value) }))]}
        value={changed.technique ?? ""}
        onChange={(event) => set({ technique: (event.target.value || null) as Drink["technique"] })}
      />
      <Field
        label={say("specs.garnish")}
        value={changed.garnishNote}
        onChange={(event) => set({ garnishNote: event.target.value })}
      />
      <Field
        label={say("specs.method")}
        value={changed.method}
        onChange={(event) => set({ method: event.target.value })}
      />
      <Field
        label={say("specs.ownAllergens")}
        hint={say("specs.ownAllergensHow")}
        value={allergens}
        onChange={(event) => setAllergens(event.target.value)}
      />
      <Field
        label={say("specs.onMenuFrom")}
        type="date"
        value={changed.onMenuFrom ?? ""}
        onChange={(event) => set({ onMenuFrom: event.target.value || null })}
      />
      <Field
        label={say("specs.onMenuUntil")}
        type="date"
        value={changed.onMenuUntil ?? ""}
        onChange={(event) => set({ onMenuUntil: event.target.value || null })}
      />
      <Problems error={save.error} />
      <div className="facts-acts">
        <Button kind="main" type="submit" disabled={isWrong || save.isPending}>
          {say("specs.saveFacts")}
        </Button>
        <Button onClick={onDone}>{say("specs.leaveThem")}</Button>
      </div>
    </form>
  );
}

/** A typed number; null when nothing is typed, undefined when it is no number. */
export function numberOrNull(typed: string): number | null | undefined {
  return typed.trim() === "" ? null : readAmount(typed, { decimalComma: true });
}
