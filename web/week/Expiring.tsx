import { Link } from "@tanstack/react-router";
import type { Discard } from "../answers.ts";
import { formatNumber, formatWhen, withUnit } from "../format.ts";
import { unitWord } from "../prep/amounts.ts";
import { useVenue } from "../shell/venue.tsx";
import { say, sayWith } from "../texts/say.ts";

/** Batches past their date; the tool proposes, the bar and its food code decide. */
export function Expiring({ batches }: { batches: readonly Discard[] }) {
  const venue = useVenue();
  if (batches.length === 0) return null;
  return (
    <section>
      <h2>{say("week.pastDate")}</h2>
      <ul className="ruled">
        {batches.map(({ prep, amount, unit, madeAt }) => (
          <li key={`${prep} ${madeAt}`}>
            {sayWith("week.batchAbout", {
              prep: <Link to="/prep">{prep}</Link>,
              amount: withUnit(formatNumber(amount), unitWord(unit)),
            })}
            <span className="line-more">{say("week.batchMade", { when: formatWhen(madeAt, venue) })}</span>
          </li>
        ))}
      </ul>
      <p className="small soft">{say("week.pastDateCaution")}</p>
    </section>
  );
}
