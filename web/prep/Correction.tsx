import { useState } from "react";
import { readAmount } from "#engine/measure/amount.ts";
import { brixOfReading } from "#engine/measure/sugar-reading.ts";
import { syrupCorrection } from "#engine/measure/syrup.ts";
import type { Corrective } from "#engine/prep/correction.ts";
import { Field } from "../parts/Field.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { plainNumber } from "./amounts.ts";
import { typedAmount } from "./typed-amount.ts";

type Props = {
  targetBrix: number;
  /** What the inputs weigh together; null where it is not known and the batch must be weighed. */
  totalWeightG: number | null;
  corrective: Corrective;
};

/** A syrup measured off its target: how much of its own water or sweetener to stir in, by weight. */
export function Correction({ targetBrix, totalWeightG, corrective }: Props) {
  const venue = useVenue();
  const [read, setRead] = useState("");
  const [weighed, setWeighed] = useState("");
  const reading = readAmount(read, { decimalComma: true });
  const measuredBrix = reading === undefined ? undefined : brixOfReading(reading);
  const weightG = weighed.trim() === "" ? totalWeightG : typedAmount(weighed, "g", venue);
  return (
    <div className="correction no-print">
      <div className="field-row">
        <Field
          label={say("prep.measured")}
          inputMode="decimal"
          value={read}
          hint={say("prep.measuredHow")}
          onChange={(event) => setRead(event.target.value)}
        />
        <Field
          label={say("prep.batchWeighs")}
          inputMode="decimal"
          value={weighed}
          placeholder={totalWeightG === null ? "" : plainNumber(totalWeightG, 0)}
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
  corrective: { sweetener, water, acidPct },
}: {
  measuredBrix: number | undefined;
  weightG: number | undefined;
  targetBrix: number;
  corrective: Corrective;
}): string {
  if (measuredBrix === undefined || measuredBrix <= 0 || measuredBrix > 85) {
    return say("prep.typeReading");
  }
  if (weightG === undefined || weightG <= 0) return say("prep.typeWeight");
  if (Math.abs(measuredBrix - targetBrix) <= SAME_BRIX) return say("prep.onTarget");
  const { addWaterG, addSweetenerG, volumeMl } = syrupCorrection({
    weightG,
    measuredBrix,
    wantedBrix: targetBrix,
    ...(acidPct === undefined ? {} : { acidPct }),
    sweetener: { name: sweetener.item, solidsPct: sweetener.solidsPct, gPerMl: 1 },
  });
  return say("prep.stirIn", {
    grams: plainNumber(addWaterG > 0 ? addWaterG : addSweetenerG, 0),
    what: addWaterG > 0 ? water : sweetener.item,
    volume: plainNumber(volumeMl, 0),
  });
}
