import { Field, Select } from "../parts/Field.tsx";
import { say } from "../texts/say.ts";
import { LABEL_STOCKS, useLabelSettings } from "./label-settings.ts";

/** Label size and date line, kept on this device. */
export function LabelSettings() {
  const { stock, setStock, dayLine, setDayLine } = useLabelSettings();
  return (
    <details className="label-settings no-print">
      <summary>{say("prep.labelSettings")}</summary>
      <div className="field-row">
        <Select
          label={say("prep.printedOn")}
          options={LABEL_STOCKS.map(({ value, text }) => ({ value, label: say(text) }))}
          value={stock}
          onChange={(event) => setStock(event.target.value)}
        />
        <Field
          label={say("prep.dayLine")}
          value={dayLine}
          hint={say("prep.dayLineHow")}
          onChange={(event) => setDayLine(event.target.value)}
        />
      </div>
    </details>
  );
}
