import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import type { ReactNode } from "react";
import { datesMissing } from "#engine/sales/dates-missing.ts";
import { businessDateOfLocal } from "#engine/sales/read/clock.ts";
import { formatDate } from "../format.ts";
import { daysQuery } from "../sales/sales-queries.ts";
import { useVenue } from "../shell/venue.tsx";
import { say, sayWith } from "../texts/say.ts";

/** What of the sales before a closing count is missing: the last day that has some, and how many after it should; null when none. */
export function useMissingSales(to: string): { last: string | null; count: number } | null {
  const venue = useVenue();
  const { data: days } = useQuery(daysQuery);
  const sold = days?.map(({ date }) => date);
  const last = sold?.at(-1);
  if (sold === undefined) return null;
  if (last === undefined) return { last: null, count: 0 };
  const count = datesMissing(sold, businessDateOfLocal(to, venue)).length;
  return count === 0 ? null : { last, count };
}

/** Says when the sales end before the count does: what was poured since then has no sale yet, and only looks unexplained. */
export function MissingSales({ to }: { to: string }) {
  const missing = useMissingSales(to);
  if (missing === null) return null;
  const { last, count } = missing;
  return (
    <p className="missing-sales">
      {last === null
        ? sayWith("variance.noSalesYet", { link: <ToSales /> })
        : sayWith("variance.salesMissing", { date: formatDate(last), count, link: <ToSales /> })}
    </p>
  );
}

/** Folds what is concluded away while sales are missing: their drinks look like trouble of all kinds. */
export function OnceSalesAreIn({ to, what, children }: { to: string; what: string; children: ReactNode }) {
  if (useMissingSales(to) === null) return children;
  return (
    <details className="causes-early">
      <summary>{what}</summary>
      {children}
    </details>
  );
}

function ToSales() {
  return <Link to="/sales">{say("variance.bringSales")}</Link>;
}
