import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { formatDate } from "../format.ts";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { Empty } from "../parts/Empty.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useMay } from "../people/signed-in.ts";
import { say } from "../texts/say.ts";
import { ActRow } from "./ActRow.tsx";
import { byDay, isUndoing } from "./act-words.ts";
import { historyQuery, type Wanted } from "./history-queries.ts";
import { UndoLast } from "./UndoLast.tsx";
import { useUndo } from "./use-undo.ts";

/** The acts by day, page by page; each that can be is undone where it stands. */
export function Acts({ wanted }: { wanted: Wanted }) {
  const [before, setBefore] = useState<readonly number[]>([]);
  const { data, error, refetch } = useQuery(historyQuery(wanted, before.at(-1)));
  const mayUndo = useMay("changePast");
  const undo = useUndo();
  if (error !== null) return <Problems error={error} onRetry={() => void refetch()} />;
  if (data === undefined) return <Busy what={say("history.opening")} />;
  const { acts, more } = data;
  if (acts.length === 0) {
    return (
      <Empty title={say("history.none")}>
        <p>{say("history.noneMore")}</p>
      </Empty>
    );
  }
  const last = acts.find((act) => act.canUndo && !isUndoing(act));
  return (
    <>
      {mayUndo && last !== undefined && before.length === 0 ? <UndoLast act={last} undo={undo} /> : null}
      <Problems error={undo.error} />
      {byDay(acts).map(({ day, acts: ofDay }) => (
        <section key={day} className="history-day">
          <h3>{formatDate(day)}</h3>
          <ol className="acts">
            {ofDay.map((act) => (
              <ActRow key={act.seq} act={act} undo={mayUndo ? undo : null} />
            ))}
          </ol>
        </section>
      ))}
      <div className="form-acts">
        {before.length === 0 ? null : (
          <Button onClick={() => setBefore(before.slice(0, -1))}>{say("history.newer")}</Button>
        )}
        {more ? (
          <Button onClick={() => setBefore([...before, acts.at(-1)?.seq ?? 0])}>
            {say("history.older")}
          </Button>
        ) : null}
      </div>
    </>
  );
}
