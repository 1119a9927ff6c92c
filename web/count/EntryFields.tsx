import { memo, useEffect, useRef } from "react";
import type { Unit } from "#engine/measure/units.ts";
import type { CountRow } from "#engine/stock/movement.ts";
import type { Venue } from "#engine/venue.ts";
import { useSteady } from "../parts/use-steady.ts";
import { say } from "../texts/say.ts";
import { Choice } from "./Choice.tsx";
import { CountIcon } from "./CountIcon.tsx";
import { type Draft, withLevel, withStep } from "./entry.ts";
import { OpenLevels } from "./OpenLevels.tsx";
import { Reading } from "./Reading.tsx";
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
  onChange: (changed: Partial<Draft>) => void;
  onPack: (pack: string) => void;
  onField: (field: FieldName) => void;
};

/** Name, pack, and the figure itself, big enough to read at arm's length. */
export function EntryFields({ draft, item, area, venue, own, problem, onChange, onPack, onField }: Props) {
  const figure = useRef<HTMLInputElement>(null);
  const isAmount = draft.way === "amount";
  const main: FieldName = isAmount ? "amount" : "containers";
  // Another way, pack or unit asks for a figure of its own, so that is where the keys go next.
  const asked = `${draft.way} ${draft.pack} ${draft.unit}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is asked for decides, the field follows from it
  useEffect(() => {
    figure.current?.focus({ preventScroll: true });
    figure.current?.select();
    onField(main);
  }, [asked]);
  const step = useSteady((sign: 1 | -1) => onChange(stepped(draft, sign)));
  const set = useSteady((tenths: number) => onChange({ containers: withLevel(draft.containers, tenths) }));
  const beginNext = useSteady(() => onChange({ containers: `${draft.containers}.` }));
  return (
    <div className="entry-fields">
      <h1 className="item-name">{item.item}</h1>
      <Ways way={draft.way} item={item} onChange={onChange} />
      {isAmount ? null : <Packs pack={draft.pack} {...{ item, own, onPack }} />}
      <div className="figure-row">
        <Step sign={-1} onStep={step} />
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
            onChange={(event) => onChange({ [main]: event.target.value })}
          />
        </label>
        <Step sign={1} onStep={step} />
      </div>
      {draft.way === "eye" ? (
        <OpenLevels typed={draft.containers} onLevel={set} onAnother={beginNext} />
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
            onChange={(event) => onChange({ grams: event.target.value })}
          />
        </label>
      ) : null}
      {isAmount ? <Units unit={draft.unit} item={item} onChange={onChange} /> : null}
      <p id="entry-reading" className="entry-reading" aria-live="polite">
        {problem === null ? <Reading {...{ draft, item, area, venue, own }} /> : <strong>{problem}</strong>}
      </p>
    </div>
  );
}

/** One full container, or one of the unit, more or fewer. */
function stepped(draft: Draft, sign: 1 | -1): Partial<Draft> {
  if (draft.way !== "amount") return { containers: withStep(draft.containers, sign) };
  const amount = Number(draft.amount.replace(",", ".")) || 0;
  return { amount: String(Math.max(0, amount + sign)) };
}

type StepProps = { sign: 1 | -1; onStep: (sign: 1 | -1) => void };

const Step = memo(function Step({ sign, onStep }: StepProps) {
  return (
    <button
      type="button"
      className="step"
      aria-label={sign === 1 ? say("count.oneMore") : say("count.oneFewer")}
      onPointerDown={(event) => event.preventDefault()}
      onClick={() => onStep(sign)}
    >
      <CountIcon name={sign === 1 ? "plus" : "minus"} size={26} />
    </button>
  );
});

type WaysProps = { way: Way; item: SheetItem; onChange: Props["onChange"] };

const Ways = memo(function Ways({ way, item, onChange }: WaysProps) {
  if (item.packs.length === 0) return null;
  const ways: Way[] = ["eye", "scale", "amount"];
  return (
    <Choice
      name={say("count.way")}
      options={ways.map((one) => ({ value: one, label: say(WAY_TEXTS[one]) }))}
      value={way}
      onPick={(picked) => onChange({ way: picked as Way })}
    />
  );
});

type PacksProps = { pack: string | null } & Pick<Props, "item" | "own" | "onPack">;

const Packs = memo(function Packs({ pack, item, own, onPack }: PacksProps) {
  if (item.packs.length < 2) return null;
  const counted = new Set(own.map((row) => row.pack));
  return (
    <Choice
      name={say("count.pack")}
      options={item.packs.map((one) => ({
        value: one.pack,
        label: counted.has(one.pack) ? `${one.pack} ✓` : one.pack,
      }))}
      value={pack ?? ""}
      onPick={onPack}
    />
  );
});

type UnitsProps = { unit: Unit; item: SheetItem; onChange: Props["onChange"] };

const Units = memo(function Units({ unit, item, onChange }: UnitsProps) {
  const units = BASE_UNITS_OF[item.base];
  if (units.length < 2) return null;
  return (
    <Choice
      name={say("count.unit")}
      options={units.map((one) => ({ value: one, label: one }))}
      value={unit}
      onPick={(picked) => onChange({ unit: picked as Unit })}
    />
  );
});

function unitWord(unit: Unit): string {
  return unit === "each" ? say("count.pieces") : unit;
}

function fullWords(pack: string | null): string {
  return pack ? say("count.fullOf", { pack }) : say("count.fullOnes");
}
