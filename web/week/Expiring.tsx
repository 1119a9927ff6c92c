import { Link } from "@tanstack/react-router";
import type { Discard } from "../answers.ts";
import { formatNumber, formatWhen } from "../format.ts";
import { useVenue } from "../shell/venue.tsx";

/** Batches past their date; the tool proposes, the bar and its food code decide. */
export function Expiring({ batches }: { batches: readonly Discard[] }) {
  const venue = useVenue();
  if (batches.length === 0) return null;
  return (
    <section>
      <h2>Past its date</h2>
      <ul className="ruled">
        {batches.map(({ prep, amount, unit, madeAt }) => (
          <li key={`${prep} ${madeAt}`}>
            <Link to="/prep">{prep}</Link>, about {formatNumber(amount)} {unit}
            <span className="line-more">made {formatWhen(madeAt, venue)}</span>
          </li>
        ))}
      </ul>
      <p className="small soft">
        By the shelf life in your book. What may still be served is for your local food code and your own
        senses.
      </p>
    </section>
  );
}
