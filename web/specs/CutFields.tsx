import type { Unit } from "#engine/measure/units.ts";
import { Field, Select } from "../parts/Field.tsx";
import { unitWord } from "../prep/amounts.ts";
import { say } from "../texts/say.ts";
import { numberOrNull } from "./DrinkFacts.tsx";

/** What one piece of a fruit gives, as typed. */
export type TypedCut = { source: string; perPiece: string; parts: string };

type Props = { typed: TypedCut; unit: Unit; sources: readonly string[]; onType: (typed: TypedCut) => void };

/** The fruit, what one piece gives, and the parts that this takes, so that peels and juice share a fruit. */
export function CutFields({ typed, unit, sources, onType }: Props) {
  const perPiece = numberOrNull(typed.perPiece);
  return (
    <div className="field-row">
      <Select
        label={say("specs.pressedFrom")}
        options={["", ...sources]}
        value={typed.source}
        onChange={(event) => onType({ ...typed, source: event.target.value })}
      />
      <Field
        label={say("specs.pieceGives", { unit: unitWord(unit) })}
        inputMode="decimal"
        value={typed.perPiece}
        hint={say("specs.pieceGivesHow")}
        error={
          perPiece === undefined || (perPiece !== null && perPiece <= 0) ? say("specs.pieceError") : undefined
        }
        onChange={(event) => onType({ ...typed, perPiece: event.target.value })}
      />
      <Field
        label={say("specs.partsTaken")}
        value={typed.parts}
        hint={say("specs.partsTakenHow")}
        onChange={(event) => onType({ ...typed, parts: event.target.value })}
      />
    </div>
  );
}
