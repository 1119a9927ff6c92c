import { Field, Select } from "../parts/Field.tsx";
import { hintOf, labelOf } from "./setting-words.ts";
import type { Place } from "./settings.ts";
import type { Settings } from "./use-settings.ts";

type Props = { settings: Settings; place: Place; hint?: string };

/** A setting that is a figure: of a phone's keys those for decimals, but where it may lie below zero. */
export function FigureSetting({ settings, place }: Props) {
  const mayBeNegative = place.startsWith("areaTemperatureC.");
  return (
    <TextSetting settings={settings} place={place} {...(mayBeNegative ? {} : { inputMode: "decimal" })} />
  );
}

type TextProps = Props & { inputMode?: "decimal"; maxLength?: number; type?: "time" };

/** A setting with what it does beneath it, or what is wrong with it. */
export function TextSetting({ settings, place, hint, ...input }: TextProps) {
  const { base, errorAt, textOf, type } = settings;
  return (
    <Field
      {...input}
      label={labelOf(place, base.currency)}
      hint={hint ?? hintOf(place, base)}
      value={textOf(place)}
      error={errorAt(place)}
      autoComplete="off"
      onChange={(event) => type(place, event.target.value)}
    />
  );
}

type ChoiceProps = Props & { options: readonly (string | { value: string; label: string })[] };

/** A setting that is one of a few. */
export function ChoiceSetting({ settings, place, options }: ChoiceProps) {
  const { base, errorAt, textOf, type } = settings;
  return (
    <Select
      label={labelOf(place, base.currency)}
      hint={hintOf(place, base)}
      options={options}
      value={textOf(place)}
      error={errorAt(place)}
      onChange={(event) => type(place, event.target.value)}
    />
  );
}
