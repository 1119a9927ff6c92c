import { formatNumber } from "../format.ts";
import { Correction } from "./Correction.tsx";
import type { BatchCard } from "./prep-queries.ts";

/** What goes in, as it is read at the scale, each to be ticked off; under it what it must come to. */
export function CardInputs({ card: { inputs, targetBrix, totalWeightG, volumeMl } }: { card: BatchCard }) {
  return (
    <section>
      <h2>Into the batch</h2>
      <ul className="card-inputs">
        {inputs.map(({ item, text }) => (
          <li key={item}>
            <label>
              <input type="checkbox" />
              <span className="card-item">{item}</span>
              <strong>{text}</strong>
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
      </dl>
      {targetBrix === null || targetBrix <= 0 || targetBrix > 85 ? null : (
        <Correction targetBrix={targetBrix} totalWeightG={totalWeightG} />
      )}
    </section>
  );
}
