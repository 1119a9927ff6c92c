import { say } from "../texts/say.ts";

/** The steps, each with a box to tick, so that a cook called away finds the place again. */
export function CardSteps({ steps }: { steps: readonly string[] }) {
  if (steps.length === 0) return null;
  return (
    <section>
      <h2>{say("prep.steps")}</h2>
      <ol className="card-steps">
        {steps.map((step) => (
          <li key={step}>
            <label>
              <input type="checkbox" />
              <span>{step}</span>
            </label>
          </li>
        ))}
      </ol>
    </section>
  );
}
