import { measureText, piecesText } from "#engine/prep/card-text.ts";
import { formatNumber } from "../format.ts";
import { Select } from "../parts/Field.tsx";
import { Correction } from "./Correction.tsx";
import type { BatchCard } from "./prep-queries.ts";
import { SCALE_STEPS, useScaleStep } from "./scale-step.ts";

/** What goes in (into one vessel: a share of all), as it is read at the scale, each to be ticked off; under it what it must come to. */
export function CardInputs({ card, share }: { card: BatchCard; share: number }) {
  const { targetBrix, corrective } = card;
  const inputs = card.inputs.map((input) => shareOf(input, share));
  const isWeighed = card.inputs.every(({ base }) => base !== "each");
  const totalWeightG = card.totalWeightG === null || !isWeighed ? null : card.totalWeightG * share;
  const volumeMl = card.volumeMl === null ? null : card.volumeMl * share;
  const [stepG, setStepG] = useScaleStep();
  return (
    <section>
      <h2>Into the batch</h2>
      <ul className="card-inputs">
        {inputs.map((input) => (
          <li key={input.item}>
            <label>
              <input type="checkbox" />
              <span className="card-item">{input.item}</span>
              <strong>{amountText(input, stepG)}</strong>
            </label>
          </li>
        ))}
      </ul>
      <dl className="card-targets">
        {targetBrix === null ? null : (
          <div>
            <dt>Must read</dt>
            <dd>{formatNumber(targetBrix, 1)} °Brix</dd>
          </div>
        )}
        {volumeMl === null ? null : (
          <div>
            <dt>Comes to, at 20 °C</dt>
            <dd>{formatNumber(volumeMl)} ml</dd>
          </div>
        )}
        {totalWeightG === null ? null : (
          <div>
            <dt>All weighs</dt>
            <dd>{formatNumber(totalWeightG)} g</dd>
          </div>
        )}
        {card.abv === null ? null : (
          <div>
            <dt>Strength, about</dt>
            <dd>{formatNumber(card.abv)} % vol</dd>
          </div>
        )}
      </dl>
      {targetBrix === null || targetBrix <= 0 || targetBrix > 85 || corrective === null ? null : (
        <Correction targetBrix={targetBrix} totalWeightG={totalWeightG} corrective={corrective} />
      )}
      {inputs.some(({ weightG, base }) => weightG !== null && base !== "each") ? (
        <ScaleStep stepG={stepG} onStep={setStepG} />
      ) : null}
    </section>
  );
}

type CardInput = BatchCard["inputs"][number];

/** What one vessel takes of an input, its share of the whole. */
function shareOf(input: CardInput, share: number): CardInput {
  if (share === 1) return input;
  const scaled = { ...input, amount: input.amount * share, weightG: input.weightG && input.weightG * share };
  const { pieces, piecesLow, piecesHigh } = input;
  if (pieces === undefined || piecesLow === undefined || piecesHigh === undefined) return scaled;
  const whole = (count: number) => Math.ceil(count * share - 1e-9);
  return { ...scaled, pieces: whole(pieces), piecesLow: whole(piecesLow), piecesHigh: whole(piecesHigh) };
}

function amountText(input: CardInput, stepG: number): string {
  const { pieces, piecesLow, piecesHigh } = input;
  if (pieces === undefined || piecesLow === undefined || piecesHigh === undefined)
    return measureText(input, stepG);
  return piecesText({ pieces, piecesLow, piecesHigh });
}

/** The steps that the kitchen's scale shows; kept on this device. */
function ScaleStep({ stepG, onStep }: { stepG: number; onStep: (step: string) => void }) {
  return (
    <Select
      label="My scale shows steps of"
      className="scale-step no-print"
      options={SCALE_STEPS.map((step) => ({ value: String(step), label: `${step} g` }))}
      value={String(stepG)}
      onChange={(event) => onStep(event.target.value)}
    />
  );
}
