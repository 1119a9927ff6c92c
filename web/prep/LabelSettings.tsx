import { Field, Select } from "../parts/Field.tsx";
import { LABEL_STOCKS, useLabelSettings } from "./label-settings.ts";

/** Label size and date line, kept on this device. */
export function LabelSettings() {
  const { stock, setStock, dayLine, setDayLine } = useLabelSettings();
  return (
    <details className="label-settings no-print">
      <summary>Labels: size and date line</summary>
      <div className="field-row">
        <Select
          label="Printed on"
          options={LABEL_STOCKS}
          value={stock}
          onChange={(event) => setStock(event.target.value)}
        />
        <Field
          label="Line on how days are counted"
          value={dayLine}
          hint="As your local food code counts; empty leaves it out. Kept on this device."
          onChange={(event) => setDayLine(event.target.value)}
        />
      </div>
    </details>
  );
}
