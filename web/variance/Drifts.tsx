import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { formatAmount, formatLocal } from "../format.ts";
import { Busy } from "../parts/Busy.tsx";
import { Money } from "../parts/Money.tsx";
import { trendQuery } from "../queries.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";

/** Items whose unexplained use leans one way count after count, which no single week need show. */
export function Drifts() {
  const venue = useVenue();
  const { data: trend, isPending } = useQuery(trendQuery);
  if (isPending) return <Busy what={say("variance.lookingOver")} />;
  const drifting =
    trend?.items.flatMap(({ drift, ...item }) => (drift === null ? [] : [{ ...item, drift }])) ?? [];
  return (
    <section>
      <h2>{say("variance.steady")}</h2>
      {drifting.length === 0 ? <p>{say("variance.noneSteady")}</p> : null}
      <ul className="drifts">
        {drifting.map(({ item, base, drift }) => (
          <li key={item}>
            <Link to="/variance/$item" params={{ item }}>
              {item}
            </Link>
            <span>
              {say("variance.steadySince", {
                amount: formatAmount(Math.abs(drift.perPeriod), base, venue),
                direction: drift.direction,
                when: formatLocal(drift.sinceAt),
              })}
            </span>
            <Money amount={drift.costPerPeriod === null ? null : Math.abs(drift.costPerPeriod)} />
          </li>
        ))}
      </ul>
    </section>
  );
}
