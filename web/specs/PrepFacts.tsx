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
import { numberOrNull } from "./DrinkFacts.tsx";

type Props = { item: Item; catalogue: CatalogueAnswer; today: string };

/** What one making of a prep yields, how long it keeps, and how it is made. */
export function PrepFacts({ item, catalogue, today }: Props) {
  const [isEditing, setEditing] = useState(false);
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
          <Button onClick={() => setEditing(true)}>
            {current === undefined ? "Say what it yields" : "Change the making"}
          </Button>
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

const NUMBERS = [
  ["yield", "The spec yields"],
  ["batchStep", "In steps of"],
  ["vesselMax", "Vessel holds"],
  ["activeMinutes", "Work, minutes"],
  ["standingHours", "Standing, hours"],
  ["shelfLifeDays", "Keeps, days"],
] as const;

type NumberKey = (typeof NUMBERS)[number][0];

function PrepForm({ item, current, today, onDone }: FormProps) {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const place = useFocusFirst<HTMLFormElement>();
  const [from, setFrom] = useState(current?.from ?? today);
  const [unit, setUnit] = useState<Unit>(current?.unit ?? item.base);
  const [method, setMethod] = useState(current?.method ?? "");
  const [typed, setTyped] = useState<Record<NumberKey, string>>(() => textsOf(current));
  const read = (key: NumberKey) => numberOrNull(typed[key]);
  const yielded = read("yield");
  const isWrong = yielded == null || yielded <= 0 || NUMBERS.some(([key]) => read(key) === undefined);
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
    if (yielded == null) return;
    save.mutate({
      prep: item.name,
      from,
      yield: yielded,
      unit,
      batchStep: read("batchStep") ?? null,
      vesselMax: read("vesselMax") ?? null,
      activeMinutes: read("activeMinutes") ?? null,
      standingHours: read("standingHours") ?? null,
      shelfLifeDays: read("shelfLifeDays") ?? null,
      method,
    });
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
      {NUMBERS.map(([key, label]) => (
        <Field
          key={key}
          label={label}
          inputMode="decimal"
          value={typed[key]}
          error={read(key) === undefined ? "a number" : undefined}
          onChange={(event) => setTyped({ ...typed, [key]: event.target.value })}
        />
      ))}
      <Field label="Method" value={method} onChange={(event) => setMethod(event.target.value)} />
      <Problems error={save.error} />
      <div className="facts-acts">
        <Button kind="main" type="submit" disabled={isWrong || from === "" || save.isPending}>
          Save the making
        </Button>
        <Button onClick={onDone}>Leave it</Button>
      </div>
    </form>
  );
}

function textsOf(current: PrepVersion | undefined): Record<NumberKey, string> {
  const text = (key: NumberKey) => String(current?.[key] ?? "");
  return {
    yield: text("yield"),
    batchStep: text("batchStep"),
    vesselMax: text("vesselMax"),
    activeMinutes: text("activeMinutes"),
    standingHours: text("standingHours"),
    shelfLifeDays: text("shelfLifeDays"),
  };
}
