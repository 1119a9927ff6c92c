import { useState } from "react";
import { readAmount } from "#engine/measure/amount.ts";
import { syrupCorrection } from "#engine/measure/syrup.ts";
import type { Corrective } from "#engine/prep/correction.ts";
import { formatNumber } from "../format.ts";
import { Field } from "../parts/Field.tsx";

type Props = {
  targetBrix: number;
  /** What the inputs weigh together; null where it is not known and the batch must be weighed. */
  totalWeightG: number | null;
  corrective: Corrective;
};

/** A syrup measured off its target: how much of its own water or sweetener to stir in, by weight. */
export function Correction({ targetBrix, totalWeightG, corrective }: Props) {
  const [read, setRead] = useState("");
  const [weighed, setWeighed] = useState("");
  const measuredBrix = readAmount(read, { decimalComma: true });
  const weightG = weighed.trim() === "" ? totalWeightG : readAmount(weighed, { decimalComma: true });
  return (
    <div className="correction no-print">
      <div className="field-row">
        <Field
          label="I measured, °Brix"
          inputMode="decimal"
          value={read}
          hint="At 20 °C, or with a meter that corrects for warmth."
          onChange={(event) => setRead(event.target.value)}
        />
        <Field
          label="The batch weighs, g"
          inputMode="decimal"
          value={weighed}
          placeholder={totalWeightG === null ? "" : String(Math.round(totalWeightG))}
          onChange={(event) => setWeighed(event.target.value)}
        />
      </div>
      <p role="status" className="correction-answer">
        {read.trim() === ""
          ? ""
          : adviceText({ measuredBrix, weightG: weightG ?? undefined, targetBrix, corrective })}
      </p>
    </div>
  );
}

/** Nearer than this no hand refractometer tells two syrups apart (common practice: scales are read to 0.2 °Bx). */
const SAME_BRIX = 0.2;

/** What to do with a syrup, in a sentence. 2000 g measured at 52 °Bx, wanted 50 → "Stir in 80 g of water …". */
export function adviceText({
  measuredBrix,
  weightG,
  targetBrix,
  corrective: { sweetener, water },
}: {
  measuredBrix: number | undefined;
  weightG: number | undefined;
  targetBrix: number;
  corrective: Corrective;
}): string {
  if (measuredBrix === undefined || measuredBrix <= 0 || measuredBrix > 85) {
    return "Write what the meter reads, from 0 to 85, as 48.5.";
  }
  if (weightG === undefined || weightG <= 0) return "Write what the batch weighs, in grams.";
  if (Math.abs(measuredBrix - targetBrix) <= SAME_BRIX) return "On target: nothing to add.";
  const { addWaterG, addSweetenerG, volumeMl } = syrupCorrection({
    weightG,
    measuredBrix,
    wantedBrix: targetBrix,
    sweetener: { name: sweetener.item, solidsPct: sweetener.solidsPct, gPerMl: 1 },
  });
  const add =
    addWaterG > 0
      ? `${formatNumber(addWaterG)} g of ${water}`
      : `${formatNumber(addSweetenerG)} g of ${sweetener.item}`;
  return `Stir in ${add} until clear, then measure again. It then makes ${formatNumber(volumeMl)} ml at 20 °C.`;
}
