import { formatNumber, withUnit } from "../format.ts";
import { Select } from "../parts/Field.tsx";
import { say } from "../texts/say.ts";
import { inputWords, plainNumber } from "./amounts.ts";
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
      <h2>{say("prep.inputs")}</h2>
      <ul className="card-inputs">
        {inputs.map((input) => (
          <li key={input.item}>
            <label>
              <input type="checkbox" />
              <span className="card-item">{input.item}</span>
              <strong>{inputWords(input, stepG)}</strong>
            </label>
          </li>
        ))}
      </ul>
      <dl className="card-targets">
        {targetBrix === null ? null : (
          <div>
            <dt>{say("prep.mustRead")}</dt>
            <dd>{formatNumber(targetBrix, 1)} °Brix</dd>
          </div>
        )}
        {volumeMl === null ? null : (
          <div>
            <dt>{say("prep.comesTo")}</dt>
            <dd>{withUnit(plainNumber(volumeMl, 0), "ml")}</dd>
          </div>
        )}
        {totalWeightG === null ? null : (
          <div>
            <dt>{say("prep.allWeighs")}</dt>
            <dd>{withUnit(plainNumber(totalWeightG, 0), "g")}</dd>
          </div>
        )}
        {card.abv === null ? null : (
          <div>
            <dt>{say("prep.strength")}</dt>
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

/** The steps that the kitchen's scale shows; kept on this device. */
function ScaleStep({ stepG, onStep }: { stepG: number; onStep: (step: string) => void }) {
  return (
    <Select
      label={say("prep.scaleSteps")}
      className="scale-step no-print"
      options={SCALE_STEPS.map((step) => ({
        value: String(step),
        label: withUnit(plainNumber(step), "g"),
      }))}
      value={String(stepG)}
      onChange={(event) => onStep(event.target.value)}
    />
  );
}
