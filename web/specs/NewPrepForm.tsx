import { useMutation, useQueryClient } from "@tanstack/react-query";
import { useNavigate } from "@tanstack/react-router";
import { type FormEvent, useState } from "react";
import { UNITS, type Unit } from "#engine/measure/units.ts";
import { sweetenerNamed } from "#engine/prep/new-syrup.ts";
import type { NewPrep } from "#engine/specs/new-prep.ts";
import type { SpecLine } from "#engine/specs/spec.ts";
import { newItem } from "#engine/stock/new-item.ts";
import type { CatalogueAnswer } from "../answers.ts";
import { answerOf, server } from "../api.ts";
import { shownWord, wordForBook } from "../book-words.ts";
import { todayAt } from "../moment.ts";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useFocusFirst } from "../parts/use-focus-first.ts";
import { unitWord } from "../prep/amounts.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { CutFields, type TypedCut } from "./CutFields.tsx";
import { numberOrNull } from "./DrinkFacts.tsx";
import { MakingFields, makingOf, typedMaking } from "./MakingFields.tsx";
import { NewPrepPreview } from "./NewPrepPreview.tsx";
import { PREP_KINDS, type PrepKind } from "./new-prep-kinds.ts";
import { SpecText, useSettled, useSpecText } from "./SpecText.tsx";
import { SyrupFields } from "./SyrupFields.tsx";

const PAUSE_MS = 300;
const [FIRST_KIND] = PREP_KINDS;

/** Any new prep from one form: what goes in, what it yields, how long it keeps, with its weights, cost and label beside it. */
export function NewPrepForm({ catalogue }: { catalogue: CatalogueAnswer }) {
  const venue = useVenue();
  const navigate = useNavigate();
  const queryClient = useQueryClient();
  const form = useFocusFirst<HTMLFormElement>();
  const [kind, setKind] = useState<PrepKind>(FIRST_KIND as PrepKind);
  const [typedName, setName] = useState("");
  const [text, setText] = useState("");
  const [brix, setBrix] = useState<number | null>(null);
  const [cut, setCut] = useState<TypedCut>({ source: "", perPiece: "", parts: shownWord("part", "flesh") });
  const [making, setMaking] = useState(typedMaking(undefined));
  const [unit, setUnit] = useState<Unit>(kind.unit);
  const [method, setMethod] = useState(methodOf(kind));
  const water = waterOf(catalogue);
  const { lines, error, ...reading } = useSpecText(text, [water.name]);
  const name = typedName.trim();
  const wanted = newPrepOf({
    ...{ name, kind, unit, brix, method, text, lines, cut, water },
    partsInBook: partsOf(catalogue, cut.source),
    from: todayAt(venue),
    making: makingOf(making),
  });
  // As text, which is the same however often the form is drawn.
  const settled = useSettled(wanted === null ? "" : JSON.stringify(wanted), PAUSE_MS);
  const save = useMutation({
    mutationFn: (prep: NewPrep) => answerOf(server.preps.new.$post({ json: prep })),
    onSuccess: async () => {
      // Asked again, the preview would say that there is such a prep already.
      await queryClient.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== "new-prep" });
      await navigate({ to: "/specs/$name", params: { name } });
    },
  });
  const choose = (chosen: string) => {
    const next = PREP_KINDS.find((one) => one.kind === chosen);
    if (next === undefined) return;
    setKind(next);
    setUnit(next.unit);
    if (method === methodOf(kind)) setMethod(methodOf(next));
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (wanted !== null) save.mutate(wanted);
  };
  return (
    <form ref={form} className="new-spec new-prep" onSubmit={submit}>
      <div className="field-row">
        <Field
          label={say("specs.name")}
          required
          value={typedName}
          onChange={(event) => setName(event.target.value)}
        />
        <Select
          label={say("specs.itIs")}
          options={PREP_KINDS.map(({ kind: value, label }) => ({ value, label: say(label) }))}
          value={kind.kind}
          onChange={(event) => choose(event.target.value)}
        />
        <Select
          label={say("specs.keptIn")}
          options={UNITS.filter((value) => value !== "piece").map((value) => ({
            value,
            label: unitWord(value),
          }))}
          value={unit}
          onChange={(event) => setUnit(event.target.value as Unit)}
        />
      </div>
      {kind.isSyrup ? (
        <SyrupFields
          sweeteners={sweetenersIn(catalogue)}
          water={water.name}
          onSyrup={(syrup, written) => {
            setText(written);
            setBrix(Number(syrup.brix.toFixed(2)));
            setMaking({ ...making, yield: String(Math.round(syrup.volumeMl)) });
          }}
        />
      ) : null}
      {kind.isCut ? (
        <CutFields typed={cut} unit={unit} sources={cutSources(catalogue)} onType={setCut} />
      ) : null}
      <SpecText
        {...reading}
        text={text}
        onText={setText}
        label={say(kind.isCut ? "specs.elseGoesIn" : "specs.goesIn")}
        example={kind.example === null ? "" : say(kind.example)}
      />
      <div className="field-row new-prep-numbers">
        <MakingFields typed={making} onType={setMaking} hints={{ shelfLifeDays: keepsWords(kind) }} />
        <Field
          label={say("specs.method")}
          className="new-prep-method"
          value={method}
          onChange={(event) => setMethod(event.target.value)}
        />
      </div>
      {settled === "" ? (
        <p className="soft" role="status">
          {missingWords({
            name,
            hasLines: lines !== null || cut.source !== "",
            hasYield: makingOf(making) !== undefined,
          })}
        </p>
      ) : (
        <NewPrepPreview wanted={JSON.parse(settled) as NewPrep} />
      )}
      <Problems error={error ?? save.error} />
      <Button kind="main" type="submit" disabled={wanted === null || save.isPending}>
        {say("specs.savePrep")}
      </Button>
    </form>
  );
}

function methodOf({ method }: PrepKind): string {
  return method === null ? "" : say(method);
}

function keepsWords({ keeps }: PrepKind): string {
  return [...(keeps === null ? [] : [say(keeps)]), say("specs.localCode")].join(" ");
}

function missingWords({
  name,
  hasLines,
  hasYield,
}: {
  name: string;
  hasLines: boolean;
  hasYield: boolean;
}): string {
  if (name === "") return say("specs.giveName");
  if (!hasLines) return say("specs.writeInputs");
  return hasYield ? "" : say("specs.writeYield");
}

function sweetenersIn({ items }: CatalogueAnswer): string[] {
  return items
    .filter(({ name, base, inHouse }) => base === "g" && !inHouse && sweetenerNamed(name) !== undefined)
    .map(({ name }) => name);
}

/** What can be pressed or cut, what already is first; a wheel or a peel is not cut again. */
function cutSources({ items, cuts }: CatalogueAnswer): string[] {
  const cutOff = new Set(cuts.map(({ gives }) => gives));
  const known = new Set(cuts.map(({ source }) => source));
  const names = items
    .filter(({ name, base }) => base === "each" && !cutOff.has(name))
    .map(({ name }) => name);
  return names.toSorted((a, b) => Number(known.has(b)) - Number(known.has(a)));
}

function partsOf({ cuts }: CatalogueAnswer, source: string): string[] {
  return cuts.filter((cut) => cut.source === source).flatMap(({ parts }) => parts);
}

/** The book's water, or one to be written with the prep. */
function waterOf({ items }: CatalogueAnswer): { name: string; isNew: boolean } {
  const water = say("specs.water");
  const names = ["water", water.toLowerCase()];
  const known = items.find(
    ({ name, base, abv }) => base === "ml" && !abv && names.includes(name.toLowerCase()),
  );
  return known === undefined ? { name: water, isNew: true } : { name: known.name, isNew: false };
}

type Typed = {
  name: string;
  kind: PrepKind;
  unit: Unit;
  brix: number | null;
  method: string;
  text: string;
  lines: Omit<SpecLine, "makes" | "from">[] | null;
  cut: TypedCut;
  /** What the book calls the parts of the fruit already. */
  partsInBook: readonly string[];
  water: { name: string; isNew: boolean };
  from: string;
  making: ReturnType<typeof makingOf>;
};

/** What the form says, whole; null while something in it is missing or not understood. */
function newPrepOf(typed: Typed): NewPrep | null {
  const { name, kind, unit, method, text, lines, water, from, making } = typed;
  const own = text.trim() === "" ? [] : lines;
  const cut = cutOf(typed);
  const isNothing = own !== null && own.length === 0 && cut === null;
  if (name === "" || making === undefined || own === null || cut === undefined || isNothing) return null;
  const needsWater = water.isNew && own.some(({ item }) => item === water.name);
  return {
    item: newItem({
      name,
      category: kind.category,
      base: unit === "each" || unit === "piece" ? "each" : isWeight(unit) ? "g" : "ml",
      inHouse: true,
      pour: "measured",
      shelfLifeDays: making.shelfLifeDays,
      brix: kind.isSyrup ? typed.brix : null,
    }),
    otherItems: needsWater ? [newItem({ name: water.name, category: "water", base: "ml", brix: 0 })] : [],
    prep: { prep: name, from, unit, ...making, method },
    lines: own,
    cut,
  };
}

function isWeight(unit: Unit): boolean {
  return unit === "g" || unit === "kg" || unit === "lb" || unit === "oz-wt";
}

/** Null where it is cut from nothing; undefined while that is half written. */
function cutOf({ kind, cut, partsInBook, name, unit }: Typed): NewPrep["cut"] | undefined {
  if (!kind.isCut || cut.source === "") return null;
  const perPiece = numberOrNull(cut.perPiece);
  const parts = cut.parts
    .split("+")
    .map((part) => wordForBook("part", part, partsInBook))
    .filter(Boolean);
  if (perPiece == null || perPiece <= 0 || parts.length === 0) return undefined;
  return { source: cut.source, from: null, gives: name, perPiece, unit, parts };
}
