import "./order.css";
import "./pars.css";
import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { useState } from "react";
import { Busy } from "../parts/Busy.tsx";
import { DataTable } from "../parts/DataTable.tsx";
import { Empty } from "../parts/Empty.tsx";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { orderQuery } from "../queries.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { type ParRow, parButtonId, parColumns } from "./par-columns.tsx";
import { SetPar } from "./SetPar.tsx";

/** Every par: the computed one, the one set by hand where there is one, and what the difference comes to. */
export function ParsPage() {
  const venue = useVenue();
  const { data: report, error, refetch } = useQuery(orderQuery({}));
  const [chosen, setChosen] = useState<string | null>(null);
  const rows = report?.items ?? [];
  const row = rows.find(({ item }) => item === chosen);
  const leave = (item: string) => {
    setChosen(null);
    focusIfLost(parButtonId(item));
  };
  return (
    <Page
      title={say("order.pars")}
      next={report === undefined ? undefined : standing(rows)}
      actions={
        <Link to="/order" className="button button-plain">
          {say("order.title")}
        </Link>
      }
    >
      {report === undefined && error === null ? <Busy what={say("order.weighing")} /> : null}
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {report !== undefined && rows.length === 0 ? (
        <Empty title={say("order.noPars")}>
          <p>{say("order.noParsNext")}</p>
        </Empty>
      ) : null}
      {row === undefined ? null : <SetPar key={row.item} row={row} onDone={() => leave(row.item)} />}
      {rows.length === 0 ? null : (
        <DataTable
          caption={say("order.parsCaption")}
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
  if (set === 0) return say("order.allComputed");
  return say("order.someSet", { set, computed: rows.length - set });
}
