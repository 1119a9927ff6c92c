import { formatAmount, formatLocal } from "../format.ts";
import { UncertainMoney } from "../parts/Uncertain.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import type { OwnerReport } from "./query.ts";

/** The unexplained money of the last periods, and the items that lean one way over them. */
export function Periods({ report: { periods, drifts } }: { report: OwnerReport }) {
  const venue = useVenue();
  return (
    <section>
      <h2>{say("report.periods")}</h2>
      <table className="report-periods">
        <caption className="visually-hidden">{say("report.periodsCaption")}</caption>
        <thead>
          <tr>
            <th scope="col">{say("variance.until")}</th>
            <th scope="col">{say("variance.unexplained")}</th>
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
          {say("report.steadily", {
            item,
            amount: formatAmount(Math.abs(perPeriod), base, venue),
            direction,
            when: formatLocal(sinceAt),
          })}
        </p>
      ))}
    </section>
  );
}
