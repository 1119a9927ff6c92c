import { Field, Select } from "../parts/Field.tsx";
import { numberOrNull } from "./DrinkFacts.tsx";

/** What one piece of a fruit gives, as typed. */
export type TypedCut = { source: string; perPiece: string; parts: string };

type Props = { typed: TypedCut; unit: string; sources: readonly string[]; onType: (typed: TypedCut) => void };

/** The fruit, what one piece gives, and the parts that this takes, so that peels and juice share a fruit. */
export function CutFields({ typed, unit, sources, onType }: Props) {
  const perPiece = numberOrNull(typed.perPiece);
  return (
    <div className="field-row">
      <Select
        label="Pressed or cut from"
        options={["", ...sources]}
        value={typed.source}
        onChange={(event) => onType({ ...typed, source: event.target.value })}
      />
      <Field
        label={`One piece gives, ${unit}`}
        inputMode="decimal"
        value={typed.perPiece}
        hint="Weigh or measure ten, and divide."
        error={perPiece === undefined || (perPiece !== null && perPiece <= 0) ? "a number, as 25" : undefined}
        onChange={(event) => onType({ ...typed, perPiece: event.target.value })}
      />
      <Field
        label="Parts it takes"
        value={typed.parts}
        hint="As flesh, skin; with + between."
        onChange={(event) => onType({ ...typed, parts: event.target.value })}
      />
    </div>
  );
}
