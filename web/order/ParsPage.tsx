import "./order.css";
import "./pars.css";
import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { useState } from "react";
import { plural } from "../format.ts";
import { Busy } from "../parts/Busy.tsx";
import { DataTable } from "../parts/DataTable.tsx";
import { Empty } from "../parts/Empty.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { orderQuery } from "../queries.ts";
import { useVenue } from "../shell/venue.tsx";
import { type ParRow, parColumns } from "./par-columns.tsx";
import { SetPar } from "./SetPar.tsx";

/** Every par: the computed one, the one set by hand where there is one, and what the difference comes to. */
export function ParsPage() {
  const venue = useVenue();
  const { data: report, error, refetch } = useQuery(orderQuery({}));
  const [chosen, setChosen] = useState<string | null>(null);
  const rows = report?.items ?? [];
  const row = rows.find(({ item }) => item === chosen);
  return (
    <Page
      title="Pars"
      next={report === undefined ? undefined : standing(rows)}
      actions={
        <Link to="/order" className="button button-plain">
          Order
        </Link>
      }
    >
      {report === undefined && error === null ? <Busy what="Weighing pars and deliveries" /> : null}
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {report !== undefined && rows.length === 0 ? (
        <Empty title="No pars yet">
          <p>A par takes sales to forecast from, a count, and a pack from a supplier with order days.</p>
        </Empty>
      ) : null}
      {row === undefined ? null : <SetPar key={row.item} row={row} onDone={() => setChosen(null)} />}
      {rows.length === 0 ? null : (
        <DataTable
          caption="Pars, and the chance to run out before the delivery after the next when filled up to them."
          columns={parColumns(venue, setChosen)}
          rows={rows}
          rowKey={({ item }) => item}
          fileName="pars"
        />
      )}
    </Page>
  );
}

function standing(rows: readonly ParRow[]): string {
  const set = rows.filter(({ parSet }) => parSet !== null).length;
  if (set === 0) return "All pars are computed. Choose an item to set its par by hand.";
  return `${plural(set, "par")} set by hand, ${rows.length - set} computed.`;
}
