import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { businessDateOfLocal } from "#engine/sales/read/clock.ts";
import { daysBetween } from "#engine/time.ts";
import { formatDate } from "../format.ts";
import { daysQuery } from "../sales/sales-queries.ts";
import { useVenue } from "../shell/venue.tsx";
import { say, sayWith } from "../texts/say.ts";

/** Says when the sales end before the count does: what was poured since then has no sale yet, and only looks unexplained. */
export function MissingSales({ to }: { to: string }) {
  const venue = useVenue();
  const { data: days } = useQuery(daysQuery);
  const last = days?.at(-1)?.date;
  if (days === undefined) return null;
  if (last === undefined)
    return <p className="missing-sales">{sayWith("variance.noSalesYet", { link: <ToSales /> })}</p>;
  const count = daysBetween({ from: last, to: businessDateOfLocal(to, venue) }) - 1;
  if (count <= 0) return null;
  return (
    <p className="missing-sales">
      {sayWith("variance.salesMissing", { date: formatDate(last), count, link: <ToSales /> })}
    </p>
  );
}

function ToSales() {
  return <Link to="/sales">{say("variance.bringSales")}</Link>;
}
