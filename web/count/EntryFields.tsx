import { useEffect, useRef } from "react";
import { temperatureOfC } from "#engine/measure/area-temperature.ts";
import type { Unit } from "#engine/measure/units.ts";
import type { CountRow } from "#engine/stock/movement.ts";
import type { Venue } from "#engine/venue.ts";
import { formatAmount, formatPlain } from "../format.ts";
import { say } from "../texts/say.ts";
import { CountIcon } from "./CountIcon.tsx";
import { type Draft, foundOf, withStep } from "./entry.ts";
import { foundWords } from "./found-words.ts";
import { OpenLevels } from "./OpenLevels.tsx";
import { quantityOf } from "./reckon.ts";
import type { SheetItem } from "./sheet.ts";
import { BASE_UNITS_OF, WAY_TEXTS, type Way } from "./ways.ts";

export type FieldName = "containers" | "grams" | "amount";

type Props = {
  draft: Draft;
  item: SheetItem;
  area: string;
  venue: Venue;
  /** What this count already holds of the item here. */
  own: readonly CountRow[];
  problem: string | null;
  onChange: (draft: Draft) => void;
  onPack: (pack: string) => void;
  onField: (field: FieldName) => void;
};

/** Name, pack, and the figure itself, big enough to read at arm's length. */
export function EntryFields(props: Props) {
  const { draft, item, own, problem, onChange, onField } = props;
  const figure = useRef<HTMLInputElement>(null);
  const main: FieldName = draft.way === "amount" ? "amount" : "containers";
  // Another way, pack or unit asks for a figure of its own, so that is where the keys go next.
  const asked = `${draft.way} ${draft.pack} ${draft.unit}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is asked for decides, the field follows from it
  useEffect(() => {
    figure.current?.focus({ preventScroll: true });
    figure.current?.select();
    onField(main);
  }, [asked]);
  const isAmount = draft.way === "amount";
  return (
    <div className="entry-fields">
      <h1 className="item-name">{item.item}</h1>
      <Ways {...props} />
      <Packs {...props} />
      <div className="figure-row">
        <Step sign={-1} {...props} />
        <label className="figure">
          <span>
            <span className="visually-hidden">{item.item}: </span>
            {isAmount ? say("count.amountIn", { unit: unitWord(draft.unit) }) : fullWords(draft.pack)}
          </span>
          <input
            ref={figure}
            inputMode="none"
            autoComplete="off"
            enterKeyHint="next"
            value={draft[main]}
            aria-invalid={problem !== null}
            aria-describedby="entry-reading"
            onFocus={() => onField(main)}
            onChange={(event) => onChange({ ...draft, [main]: event.target.value })}
          />
        </label>
        <Step sign={1} {...props} />
      </div>
      {draft.way === "eye" ? (
        <OpenLevels typed={draft.containers} onType={(containers) => onChange({ ...draft, containers })} />
      ) : null}
      {draft.way === "scale" ? (
        <label className="figure figure-grams">
          <span>{say("count.grams")}</span>
          <input
            inputMode="none"
            autoComplete="off"
            enterKeyHint="next"
            value={draft.grams}
            onFocus={() => onField("grams")}
            onChange={(event) => onChange({ ...draft, grams: event.target.value })}
          />
        </label>
      ) : null}
      {isAmount ? <Units {...props} /> : null}
      <p id="entry-reading" className="entry-reading" aria-live="polite">
        {problem === null ? <Reading {...props} own={own} /> : <strong>{problem}</strong>}
      </p>
    </div>
  );
}

/** The entry read back, so that a slip is seen before it is made. */
function Reading({ draft, item, area, venue, own }: Props) {
  const found = foundOf(draft);
  if ("problem" in found) {
    const others = own.filter(({ pack }) => pack !== draft.pack);
    return others.length === 0 ? " " : say("count.soFar", { found: others.map(foundWords).join("; ") });
  }
  const total = quantityOf([{ ...found, area }], item, venue);
  const words = foundWords(found);
  if (found.amount !== null || total === null) return words;
  const isCold = total.quantity !== quantityOf([found], item, venue)?.quantity;
  const amount = formatAmount(total.quantity, item.base, venue);
  const temperature = formatPlain(temperatureOfC(venue, area) ?? 20);
  return `${words}: ${isCold ? say("count.at20", { amount, temperature }) : amount}`;
}

function Step({ sign, draft, onChange }: Props & { sign: 1 | -1 }) {
  const step = () => {
    if (draft.way !== "amount") return onChange({ ...draft, containers: withStep(draft.containers, sign) });
    const amount = Number(draft.amount.replace(",", ".")) || 0;
    onChange({ ...draft, amount: String(Math.max(0, amount + sign)) });
  };
  return (
    <button
      type="button"
      className="step"
      aria-label={sign === 1 ? say("count.oneMore") : say("count.oneFewer")}
      onPointerDown={(event) => event.preventDefault()}
      onClick={step}
    >
      <CountIcon name={sign === 1 ? "plus" : "minus"} size={26} />
    </button>
  );
}

function Ways({ draft, item, onChange }: Props) {
  const ways: Way[] = item.packs.length === 0 ? ["amount"] : ["eye", "scale", "amount"];
  if (ways.length === 1) return null;
  return (
    <Choice
      name={say("count.way")}
      options={ways.map((way) => ({ value: way, label: say(WAY_TEXTS[way]) }))}
      value={draft.way}
      onPick={(way) => onChange({ ...draft, way: way as Way })}
    />
  );
}

function Packs({ draft, item, own, onPack }: Props) {
  if (draft.way === "amount" || item.packs.length < 2) return null;
  const counted = new Set(own.map(({ pack }) => pack));
  return (
    <Choice
      name={say("count.pack")}
      options={item.packs.map(({ pack }) => ({ value: pack, label: counted.has(pack) ? `${pack} ✓` : pack }))}
      value={draft.pack ?? ""}
      onPick={onPack}
    />
  );
}

function Units({ draft, item, onChange }: Props) {
  const units = BASE_UNITS_OF[item.base];
  if (units.length < 2) return null;
  return (
    <Choice
      name={say("count.unit")}
      options={units.map((unit) => ({ value: unit, label: unit }))}
      value={draft.unit}
      onPick={(unit) => onChange({ ...draft, unit: unit as Unit })}
    />
  );
}

type ChoiceProps = {
  name: string;
  options: { value: string; label: string }[];
  value: string;
  onPick: (value: string) => void;
};

function Choice({ name, options, value, onPick }: ChoiceProps) {
  return (
    <fieldset className="choice" aria-label={name}>
      {options.map((option) => (
        <button
          key={option.value}
          type="button"
          aria-pressed={option.value === value}
          onClick={() => onPick(option.value)}
        >
          {option.label}
        </button>
      ))}
    </fieldset>
  );
}

function unitWord(unit: Unit): string {
  return unit === "each" ? say("count.pieces") : unit;
}

function fullWords(pack: string | null): string {
  return pack ? say("count.fullOf", { pack }) : say("count.fullOnes");
}
