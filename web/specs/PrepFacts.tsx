import { useMutation, useQueryClient } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import { UNITS, type Unit } from "#engine/measure/units.ts";
import type { PrepVersion } from "#engine/specs/spec.ts";
import type { Item } from "#engine/stock/item.ts";
import type { CatalogueAnswer } from "../answers.ts";
import { answerOf, server } from "../api.ts";
import { formatDate, formatNumber } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useFocusFirst } from "../parts/use-focus-first.ts";
import { useMay } from "../people/signed-in.ts";
import { MakingFields, makingOf, typedMaking } from "./MakingFields.tsx";

type Props = { item: Item; catalogue: CatalogueAnswer; today: string };

/** What one making of a prep yields, how long it keeps, and how it is made. */
export function PrepFacts({ item, catalogue, today }: Props) {
  const [isEditing, setEditing] = useState(false);
  const runsBar = useMay("runBar");
  const versions = catalogue.preps
    .filter(({ prep }) => prep === item.name)
    .sort((a, b) => b.from.localeCompare(a.from));
  const current = versions.find(({ from }) => from <= today) ?? versions[0];
  const cut = catalogue.cuts.find(({ gives }) => gives === item.name);
  const facts = [
    ...(current === undefined ? [] : versionFacts(current)),
    ...(cut === undefined ? [] : [["Cut from", `${cut.source}: ${cut.perPiece} ${cut.unit} a piece`]]),
    ["Kept", item.stocked ? "in stock, counted" : "made to order, not counted"],
  ];
  return (
    <section>
      <h2>Making</h2>
      {isEditing ? (
        <PrepForm item={item} current={current} today={today} onDone={() => setEditing(false)} />
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
          {runsBar ? (
            <Button onClick={() => setEditing(true)}>
              {current === undefined ? "Say what it yields" : "Change the making"}
            </Button>
          ) : null}
        </>
      )}
    </section>
  );
}

function versionFacts(version: PrepVersion): string[][] {
  const { unit, batchStep, vesselMax, activeMinutes, standingHours, shelfLifeDays, method, from } = version;
  const amount = (value: number | null) => (value === null ? "" : `${formatNumber(value)} ${unit}`);
  return [
    ["The spec yields", amount(version.yield)],
    ["In steps of", amount(batchStep)],
    ["Vessel holds", amount(vesselMax)],
    ["Work", activeMinutes === null ? "" : `${activeMinutes} min`],
    ["Standing", standingHours === null ? "" : `${standingHours} h`],
    ["Keeps", shelfLifeDays === null ? "not on record" : `${shelfLifeDays} days, the day of making included`],
    ["Method", method],
    ["Since", formatDate(from)],
  ].filter(([, words]) => words !== "");
}

type FormProps = { item: Item; current: PrepVersion | undefined; today: string; onDone: () => void };

function PrepForm({ item, current, today, onDone }: FormProps) {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const place = useFocusFirst<HTMLFormElement>();
  const [from, setFrom] = useState(current?.from ?? today);
  const [unit, setUnit] = useState<Unit>(current?.unit ?? item.base);
  const [method, setMethod] = useState(current?.method ?? "");
  const [typed, setTyped] = useState(() => typedMaking(current));
  const making = makingOf(typed);
  const save = useMutation({
    mutationFn: (version: PrepVersion) => answerOf(server.preps.$post({ json: version })),
    onSuccess: async () => {
      notify({ text: `${item.name}: the making from ${formatDate(from)} is saved.` });
      onDone();
      await queryClient.invalidateQueries();
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (making !== undefined) save.mutate({ prep: item.name, from, unit, ...making, method });
  };
  return (
    <form ref={place} className="facts-form" onSubmit={submit}>
      <Field
        label="From"
        type="date"
        required
        value={from}
        onChange={(event) => setFrom(event.target.value)}
      />
      <Select
        label="Unit"
        options={UNITS}
        value={unit}
        onChange={(event) => setUnit(event.target.value as Unit)}
      />
      <MakingFields typed={typed} onType={setTyped} />
      <Field label="Method" value={method} onChange={(event) => setMethod(event.target.value)} />
      <Problems error={save.error} />
      <div className="facts-acts">
        <Button kind="main" type="submit" disabled={making === undefined || from === "" || save.isPending}>
          Save the making
        </Button>
        <Button onClick={onDone}>Leave it</Button>
      </div>
    </form>
  );
}
