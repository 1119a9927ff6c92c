import { useMutation, useQueryClient } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import { UNITS, type Unit } from "#engine/measure/units.ts";
import type { Cut, PrepVersion } from "#engine/specs/spec.ts";
import type { Item } from "#engine/stock/item.ts";
import type { CatalogueAnswer } from "../answers.ts";
import { answerOf, server } from "../api.ts";
import { formatDate, formatNumber, withUnit } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useFocusFirst } from "../parts/use-focus-first.ts";
import { useMay } from "../people/signed-in.ts";
import { plainNumber, unitWord } from "../prep/amounts.ts";
import { say } from "../texts/say.ts";
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
    ...(cut === undefined ? [] : [[say("specs.cutFrom"), cutWords(cut)]]),
    [say("specs.kept"), say(item.stocked ? "specs.keptStock" : "specs.keptOrder")],
  ];
  return (
    <section>
      <h2>{say("specs.making")}</h2>
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
              {say(current === undefined ? "specs.sayYield" : "specs.changeMaking")}
            </Button>
          ) : null}
        </>
      )}
    </section>
  );
}

function cutWords({ source, perPiece, unit }: Cut): string {
  return say("specs.cutGives", { source, amount: withUnit(plainNumber(perPiece), unitWord(unit)) });
}

function versionFacts(version: PrepVersion): string[][] {
  const { unit, batchStep, vesselMax, activeMinutes, standingHours, shelfLifeDays, method, from } = version;
  const amount = (value: number | null) =>
    value === null ? "" : withUnit(formatNumber(value), unitWord(unit));
  return [
    [say("specs.specYields"), amount(version.yield)],
    [say("specs.inSteps"), amount(batchStep)],
    [say("specs.vesselHolds"), amount(vesselMax)],
    [say("specs.work"), activeMinutes === null ? "" : withUnit(plainNumber(activeMinutes), "min")],
    [say("specs.standing"), standingHours === null ? "" : withUnit(plainNumber(standingHours), "h")],
    [
      say("specs.keeps"),
      shelfLifeDays === null ? say("specs.keepsUnknown") : say("specs.keepsFor", { days: shelfLifeDays }),
    ],
    [say("specs.method"), method],
    [say("specs.since"), formatDate(from)],
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
      notify({ text: say("specs.makingSaved", { prep: item.name, date: formatDate(from) }) });
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
        label={say("specs.from")}
        type="date"
        required
        value={from}
        onChange={(event) => setFrom(event.target.value)}
      />
      <Select
        label={say("specs.unit")}
        options={UNITS.map((value) => ({ value, label: unitWord(value) }))}
        value={unit}
        onChange={(event) => setUnit(event.target.value as Unit)}
      />
      <MakingFields typed={typed} onType={setTyped} />
      <Field label={say("specs.method")} value={method} onChange={(event) => setMethod(event.target.value)} />
      <Problems error={save.error} />
      <div className="facts-acts">
        <Button kind="main" type="submit" disabled={making === undefined || from === "" || save.isPending}>
          {say("specs.saveMaking")}
        </Button>
        <Button onClick={onDone}>{say("specs.leaveIt")}</Button>
      </div>
    </form>
  );
}
