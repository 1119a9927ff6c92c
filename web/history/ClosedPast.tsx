import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { useState } from "react";
import { formatDate, formatLocal, listWords } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { ConfirmDialog } from "../parts/ConfirmDialog.tsx";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useMay } from "../people/signed-in.ts";
import { say, sayWith } from "../texts/say.ts";
import { CLOSED_WEEKS, type Closing, closeWeek, closingQuery } from "./history-queries.ts";
import { Reopen } from "./Reopen.tsx";

/** Up to when the past is closed, the week to close next, and the owner's way to reopen one. */
export function ClosedPast() {
  const { data, error, refetch } = useQuery(closingQuery);
  const mayReopen = useMay("reopenPast");
  if (error !== null) return <Problems error={error} onRetry={() => void refetch()} />;
  if (data === undefined) return null;
  const { closed, next } = data;
  return (
    <section className="closed-past">
      <h2 id={CLOSED_WEEKS} tabIndex={-1}>
        {say("history.closedWeeks")}
      </h2>
      <p>{closed === null ? say("history.nothingClosed") : <Closed closed={closed} />}</p>
      <div className="closed-acts">
        {next === null ? null : <CloseNext next={next} />}
        {closed !== null && mayReopen ? <Reopen through={closed.through} /> : null}
      </div>
      {closed !== null && !mayReopen ? <p className="soft">{say("history.askOwner")}</p> : null}
    </section>
  );
}

function Closed({ closed }: { closed: NonNullable<Closing["closed"]> }) {
  const { through, counts, closedBy, closedAtLocal } = closed;
  const facts = {
    closed: <strong>{say("history.closedUpTo", { date: formatDate(through) })}</strong>,
    who: closedBy,
    when: formatLocal(closedAtLocal),
  };
  return counts.length === 0
    ? sayWith("history.closedBy", facts)
    : sayWith("history.closedWithCounts", { ...facts, counts: listWords(counts) });
}

function CloseNext({ next: { through, closing, unsettled } }: { next: NonNullable<Closing["next"]> }) {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const [isAsking, setAsking] = useState(false);
  const close = useMutation({
    mutationFn: () => closeWeek(through),
    onSuccess: async () => {
      setAsking(false);
      notify({ text: say("history.nowClosed", { date }) });
      await queryClient.invalidateQueries();
      focusIfLost(CLOSED_WEEKS);
    },
  });
  const isReady = unsettled === 0;
  const date = formatDate(through);
  return (
    <div>
      <Button kind={isReady ? "main" : "plain"} onClick={() => setAsking(true)}>
        {say("history.closeTo", { date })}
      </Button>
      <p className="soft">
        {isReady
          ? say("history.countExplained", { closing })
          : sayWith("history.firstLookAt", {
              link: <Link to="/variance">{say("history.likelyCauses", { count: unsettled })}</Link>,
            })}
      </p>
      <ConfirmDialog
        isOpen={isAsking}
        title={say("history.closeToAsk", { date })}
        act={say("history.close")}
        isBusy={close.isPending}
        onConfirm={() => close.mutate()}
        onCancel={() => setAsking(false)}
      >
        <p>{say("history.closeMore", { closing })}</p>
        <Problems error={close.error} />
      </ConfirmDialog>
    </div>
  );
}
