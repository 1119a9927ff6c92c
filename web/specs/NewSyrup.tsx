import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { useNavigate } from "@tanstack/react-router";
import { type FormEvent, useState } from "react";
import { readAmount } from "#engine/measure/amount.ts";
import { newSyrup, readRatio, type NewSyrup as Syrup, sweetenerNamed } from "#engine/prep/new-syrup.ts";
import { useBy as lastDayOf } from "#engine/prep/use-by.ts";
import type { Item } from "#engine/stock/item.ts";
import type { CatalogueAnswer } from "../answers.ts";
import { answerOf, server } from "../api.ts";
import { formatDate, formatMoney, formatNumber } from "../format.ts";
import { todayAt } from "../moment.ts";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useVenue } from "../shell/venue.tsx";
import { newPrep } from "./NewSpec.tsx";
import { costQuery } from "./spec-queries.ts";

const WAYS = [
  { value: "brix", label: "°Brix" },
  { value: "weight", label: "a ratio by weight" },
  { value: "volume", label: "a ratio by volume (cups)" },
] as const;

type Way = (typeof WAYS)[number]["value"];

/** A syrup from one form: its weights, yield, cost and label at once; saved as item, making and spec. */
export function NewSyrup({ catalogue }: { catalogue: CatalogueAnswer }) {
  const venue = useVenue();
  const navigate = useNavigate();
  const queryClient = useQueryClient();
  const { data: costs } = useQuery(costQuery);
  const sweeteners = catalogue.items.filter(
    ({ name, base, inHouse }) => base === "g" && !inHouse && sweetenerNamed(name) !== undefined,
  );
  const [typed, setTyped] = useState("");
  const [chosen, setChosen] = useState(sweeteners[0]?.name ?? "");
  const [way, setWay] = useState<Way>("weight");
  const [strength, setStrength] = useState("1:1");
  const [volume, setVolume] = useState("1000");
  const [keeps, setKeeps] = useState("");
  const [minutes, setMinutes] = useState("15");
  const name = typed.trim();
  const sweetener = sweeteners.find((item) => item.name === chosen);
  const keepsDays = keeps.trim() === "" ? null : readAmount(keeps, { decimalComma: true });
  const workMinutes = minutes.trim() === "" ? null : readAmount(minutes, { decimalComma: true });
  const reckoned = reckon({ way, strength, volume, sweetener: chosen });
  const isTaken = catalogue.items.some((item) => item.name.toLowerCase() === name.toLowerCase());
  const water = catalogue.items.find(
    ({ name: item, base, abv }) => base === "ml" && !abv && /^water$/i.test(item),
  );
  const today = todayAt(venue);
  const sugarCost = costs?.items.find(({ item }) => item === chosen)?.costPerBase ?? null;

  const save = useMutation({
    mutationFn: async (syrup: Syrup) => {
      if (water === undefined) {
        await answerOf(server.items.$post({ json: { ...newPrep("Water", "ml"), ...WATER } }));
      }
      const yieldMl = Math.round(syrup.volumeMl);
      const item: Item = {
        ...newPrep(name, "ml"),
        category: "syrup",
        brix: Number(syrup.brix.toFixed(2)),
        shelfLifeDays: keepsDays ?? null,
      };
      await answerOf(server.items.$post({ json: item }));
      await answerOf(
        server.preps.$post({
          json: {
            prep: name,
            from: today,
            yield: yieldMl,
            unit: "ml",
            batchStep: null,
            vesselMax: null,
            activeMinutes: workMinutes ?? null,
            standingHours: null,
            shelfLifeDays: keepsDays ?? null,
            method: "Weigh sweetener and water. Stir until clear. Measure °Brix, cool, label, date.",
          },
        }),
      );
      const line = { orItems: [], note: "" };
      await answerOf(
        server.specs.$post({
          json: {
            makes: name,
            from: today,
            lines: [
              { ...line, line: 1, amount: syrup.sweetenerG, unit: "g", item: chosen },
              { ...line, line: 2, amount: syrup.waterMl, unit: "ml", item: water?.name ?? "Water" },
            ],
          },
        }),
      );
    },
    onSuccess: async () => {
      await queryClient.invalidateQueries();
      await navigate({ to: "/specs/$name", params: { name } });
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if ("syrup" in reckoned) save.mutate(reckoned.syrup);
  };
  if (sweetener === undefined) {
    return <p>No sugar or honey kept by weight is in the book. Enter one as an item first.</p>;
  }
  const isWrong = keepsDays === undefined || workMinutes === undefined;
  return (
    <form className="new-spec" onSubmit={submit}>
      <div className="field-row">
        <Field
          label="Name of the syrup"
          required
          value={typed}
          error={isTaken ? "This name is taken." : undefined}
          onChange={(event) => setTyped(event.target.value)}
        />
        <Select
          label="Sweetened with"
          options={sweeteners.map((item) => item.name)}
          value={chosen}
          onChange={(event) => setChosen(event.target.value)}
        />
        <Select
          label="Given as"
          options={WAYS}
          value={way}
          onChange={(event) => {
            const next = event.target.value as Way;
            setWay(next);
            setStrength(next === "brix" ? "50" : "1:1");
          }}
        />
        <Field
          label={way === "brix" ? "°Brix" : "Sweetener : water"}
          value={strength}
          onChange={(event) => setStrength(event.target.value)}
        />
        <Field
          label="Yield, ml"
          inputMode="decimal"
          value={volume}
          onChange={(event) => setVolume(event.target.value)}
        />
        <Field
          label="Keeps, days"
          inputMode="decimal"
          value={keeps}
          hint="As your local food code allows."
          error={keepsDays === undefined ? "a number" : undefined}
          onChange={(event) => setKeeps(event.target.value)}
        />
        <Field
          label="Work, minutes"
          inputMode="decimal"
          value={minutes}
          error={workMinutes === undefined ? "a number" : undefined}
          onChange={(event) => setMinutes(event.target.value)}
        />
      </div>
      {"problem" in reckoned ? (
        <p role="status">{reckoned.problem}</p>
      ) : (
        <SyrupFacts
          syrup={reckoned.syrup}
          name={name}
          sweetener={chosen}
          cost={
            sugarCost === null ? null : formatMoney(reckoned.syrup.sweetenerG * sugarCost, venue.currency)
          }
          useByText={labelText(today, keepsDays ?? null)}
        />
      )}
      <Button
        kind="main"
        type="submit"
        disabled={name === "" || isTaken || isWrong || "problem" in reckoned || save.isPending}
      >
        Save the syrup
      </Button>
      <Problems error={save.error} />
    </form>
  );
}

const WATER: Partial<Item> = { category: "water", inHouse: false, brix: 0 };

function reckon({
  way,
  strength,
  volume,
  sweetener,
}: {
  way: Way;
  strength: string;
  volume: string;
  sweetener: string;
}): { syrup: Syrup } | { problem: string } {
  const volumeMl = readAmount(volume, { decimalComma: true });
  if (volumeMl === undefined || volumeMl <= 0) return { problem: "Write the yield in ml, as 1000." };
  const kind = sweetenerNamed(sweetener);
  if (kind === undefined) return { problem: "Choose what it is sweetened with." };
  const brix = readAmount(strength, { decimalComma: true });
  const ratio = readRatio(strength);
  try {
    if (way === "brix") {
      if (brix === undefined || brix <= 0) return { problem: "Write the °Brix, as 50." };
      return { syrup: newSyrup({ wish: { way, brix }, volumeMl, sweetener: kind }) };
    }
    if (ratio === undefined) return { problem: "Write the ratio of sweetener to water, as 2:1." };
    return { syrup: newSyrup({ wish: { way, ...ratio }, volumeMl, sweetener: kind }) };
  } catch (error) {
    if (error instanceof RangeError) return { problem: error.message };
    throw error;
  }
}

function labelText(madeOn: string, shelfLifeDays: number | null): string {
  const last = lastDayOf(madeOn, shelfLifeDays);
  const until =
    last === null ? "use by ________ (write it in by your local food code)" : `use by ${formatDate(last)}`;
  return `made ${formatDate(madeOn)}, ${until}, initials ____`;
}

type FactsProps = { syrup: Syrup; name: string; sweetener: string; cost: string | null; useByText: string };

function SyrupFacts({ syrup, name, sweetener, cost, useByText }: FactsProps) {
  const rows = [
    ["Weigh", `${formatNumber(syrup.sweetenerG)} g ${sweetener} + ${formatNumber(syrup.waterG)} g water`],
    ["Comes to, at 20 °C", `${formatNumber(syrup.volumeMl)} ml at ${formatNumber(syrup.brix, 1)} °Brix`],
    ["Costs", cost ?? "no price known"],
    ["Label", `${name === "" ? "(name)" : name}, ${useByText}`],
  ];
  return (
    <div role="status">
      <dl className="facts">
        {rows.map(([term, words]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      {syrup.caution === null ? null : <p className="syrup-caution">In the fridge: {syrup.caution}</p>}
    </div>
  );
}
