import type { PrepVersion } from "#engine/specs/spec.ts";
import { Field } from "../parts/Field.tsx";
import { say } from "../texts/say.ts";
import { numberOrNull } from "./DrinkFacts.tsx";

const NUMBERS = [
  ["yield", "specs.specYields"],
  ["batchStep", "specs.inSteps"],
  ["vesselMax", "specs.vesselHolds"],
  ["activeMinutes", "specs.workMinutes"],
  ["standingHours", "specs.standingHours"],
  ["shelfLifeDays", "specs.keepsDays"],
] as const;

type NumberKey = (typeof NUMBERS)[number][0];

/** The numbers of a making, as typed. */
export type TypedMaking = Record<NumberKey, string>;

export function typedMaking(version: PrepVersion | undefined): TypedMaking {
  const text = (key: NumberKey) => String(version?.[key] ?? "");
  return {
    yield: text("yield"),
    batchStep: text("batchStep"),
    vesselMax: text("vesselMax"),
    activeMinutes: text("activeMinutes"),
    standingHours: text("standingHours"),
    shelfLifeDays: text("shelfLifeDays"),
  };
}

/** What was typed, as a version of a prep holds it; undefined while a number is wrong or the yield is missing. */
export function makingOf(typed: TypedMaking): Pick<PrepVersion, NumberKey> | undefined {
  const [yielded, batchStep, vesselMax, activeMinutes, standingHours, shelfLifeDays] = NUMBERS.map(([key]) =>
    numberOrNull(typed[key]),
  );
  const rest = { batchStep, vesselMax, activeMinutes, standingHours, shelfLifeDays };
  if (yielded == null || yielded <= 0 || Object.values(rest).includes(undefined)) return undefined;
  return { yield: yielded, ...(rest as Omit<Pick<PrepVersion, NumberKey>, "yield">) };
}

type Props = {
  typed: TypedMaking;
  onType: (typed: TypedMaking) => void;
  /** Said under single fields. */
  hints?: Partial<TypedMaking>;
};

/** Yield, step, vessel, times and shelf life of a prep. */
export function MakingFields({ typed, onType, hints = {} }: Props) {
  return NUMBERS.map(([key, text]) => (
    <Field
      key={key}
      label={say(text)}
      inputMode="decimal"
      value={typed[key]}
      hint={hints[key]}
      error={numberOrNull(typed[key]) === undefined ? say("specs.number") : undefined}
      onChange={(event) => onType({ ...typed, [key]: event.target.value })}
    />
  ));
}
