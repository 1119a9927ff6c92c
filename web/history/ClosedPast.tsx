import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { useState } from "react";
import { formatDate, formatLocal, listWords, plural } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { ConfirmDialog } from "../parts/ConfirmDialog.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useMay } from "../people/signed-in.ts";
import { type Closing, closeWeek, closingQuery } from "./history-queries.ts";
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
      <h2>Closed weeks</h2>
      <p>
        {closed === null ? (
          "Nothing is closed yet: any day can still be changed."
        ) : (
          <Closed closed={closed} />
        )}
      </p>
      <div className="closed-acts">
        {next === null ? null : <CloseNext next={next} />}
        {closed !== null && mayReopen ? <Reopen through={closed.through} /> : null}
      </div>
      {closed !== null && !mayReopen ? (
        <p className="soft">Something in it has to change? The owner can reopen it, with a reason.</p>
      ) : null}
    </section>
  );
}

function Closed({ closed }: { closed: NonNullable<Closing["closed"]> }) {
  const { through, counts, closedBy, closedAtLocal } = closed;
  return (
    <>
      <strong>Closed up to {formatDate(through)}</strong>
      {counts.length === 0 ? "" : `, with the count ${listWords(counts)}`}, by {closedBy} on{" "}
      {formatLocal(closedAtLocal)}. Nothing in it can be changed.
    </>
  );
}

function CloseNext({ next: { through, closing, unsettled } }: { next: NonNullable<Closing["next"]> }) {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const [isAsking, setAsking] = useState(false);
  const close = useMutation({
    mutationFn: () => closeWeek(through),
    onSuccess: async () => {
      setAsking(false);
      notify({ text: `Closed up to ${formatDate(through)}.` });
      await queryClient.invalidateQueries();
    },
  });
  const isReady = unsettled === 0;
  return (
    <div>
      <Button kind={isReady ? "main" : "plain"} onClick={() => setAsking(true)}>
        Close the week to {formatDate(through)}
      </Button>
      <p className="soft">
        {isReady ? (
          `The count ${closing} is explained.`
        ) : (
          <>
            First look at <Link to="/variance">{plural(unsettled, "likely cause")}</Link> that nobody has
            checked yet.
          </>
        )}
      </p>
      <ConfirmDialog
        isOpen={isAsking}
        title={`Close the week to ${formatDate(through)}?`}
        act="Close the week"
        isBusy={close.isPending}
        onConfirm={() => close.mutate()}
        onCancel={() => setAsking(false)}
      >
        <p>
          Counts, deliveries, batches, losses, specs, prices and sales up to that day stay as they are, and so
          does the count {closing}. Only the owner can reopen it, with a reason.
        </p>
        <Problems error={close.error} />
      </ConfirmDialog>
    </div>
  );
}
