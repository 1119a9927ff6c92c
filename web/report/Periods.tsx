import { formatAmount, formatLocal } from "../format.ts";
import { UncertainMoney } from "../parts/Uncertain.tsx";
import { useVenue } from "../shell/venue.tsx";
import type { OwnerReport } from "./query.ts";

/** The unexplained money of the last periods, and the items that lean one way over them. */
export function Periods({ report: { periods, drifts } }: { report: OwnerReport }) {
  const venue = useVenue();
  return (
    <section>
      <h2>Unexplained so far</h2>
      <table className="report-periods">
        <caption className="visually-hidden">Unexplained at cost, by the count that ended the period</caption>
        <thead>
          <tr>
            <th scope="col">Until</th>
            <th scope="col">Unexplained</th>
          </tr>
        </thead>
        <tbody>
          {periods.map(({ closing, to, cost, sd }) => (
            <tr key={closing}>
              <th scope="row">{formatLocal(to)}</th>
              <td>
                <UncertainMoney amount={cost} sd={sd} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {drifts.map(({ item, base, direction, perPeriod, sinceAt }) => (
        <p key={item} className="report-drift">
          {item}: steadily {formatAmount(Math.abs(perPeriod), base, venue)}{" "}
          {direction === "missing" ? "more" : "less"} between counts than is explained, since{" "}
          {formatLocal(sinceAt)}.
        </p>
      ))}
    </section>
  );
}
