import { formatNumber, withUnit } from "../format.ts";
import { say } from "../texts/say.ts";
import { benchBase } from "./amounts.ts";
import type { PrepReport } from "./prep-queries.ts";

/** All that the day's work takes from the shelves, each thing once, to be ticked off with a wet thumb. */
export function PickList({ lines }: { lines: PrepReport["pickList"] }) {
  if (lines.length === 0) return null;
  return (
    <section id="fetch">
      <h2>{say("prep.fetch")}</h2>
      <ul className="pick-lines">
        {lines.map(({ item, amount, base, weightG }) => (
          <li key={item}>
            <label>
              <input type="checkbox" />
              <span>{item}</span>
              <strong>{benchBase(amount, base)}</strong>
              {base === "g" || weightG === null ? null : (
                <span className="soft">{withUnit(formatNumber(weightG), "g")}</span>
              )}
            </label>
          </li>
        ))}
      </ul>
    </section>
  );
}
