import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { answerOf, server } from "../api.ts";
import { formatDate, formatMoment, formatMoney, formatNumber } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { ConfirmDialog } from "../parts/ConfirmDialog.tsx";
import { DataTable } from "../parts/DataTable.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";
import { meaningWords } from "./meaning-of.ts";
import { type RingNameRow, ringNamesQuery } from "./sales-queries.ts";

/** The meanings people gave to the till's names: when, by whom, what hangs on each; each can be taken back. */
export function KnownNames() {
  const venue = useVenue();
  const queryClient = useQueryClient();
  const notify = useNotify();
  const { data: names } = useQuery(ringNamesQuery);
  const [asked, setAsked] = useState<RingNameRow | null>(null);
  const putBack = async ({ ringName, soldAs, serves, amount, unit }: RingNameRow) => {
    await answerOf(server["ring-names"].$post({ json: { ringName, soldAs, serves, amount, unit } }));
    await queryClient.invalidateQueries();
  };
  const undo = useMutation({
    mutationFn: ({ ringName }: RingNameRow) =>
      answerOf(server["ring-names"].undo.$post({ json: { ringName } })),
    onSuccess: async ({ means }, ring) => {
      setAsked(null);
      const now = means === null ? "has no meaning given any more" : `means ${meaningWords(means)} again`;
      notify({ text: `“${ring.ringName}” ${now}.`, undo: () => void putBack(ring) });
      await queryClient.invalidateQueries();
    },
  });
  if (names === undefined || names.length === 0) return null;
  const columns = columnsOf({ venue, onUndo: setAsked });
  return (
    <details className="known-names">
      <summary>Meanings given: {names.length}</summary>
      <DataTable
        caption="What the till's names mean. A name that is a drink's own needs no row here."
        columns={columns}
        rows={names}
        rowKey={({ ringName }) => ringName}
        fileName="ring-names"
      />
      <ConfirmDialog
        isOpen={asked !== null}
        title={`Take back what “${asked?.ringName ?? ""}” means?`}
        act="Take it back"
        isBusy={undo.isPending}
        onConfirm={() => {
          if (asked !== null) undo.mutate(asked);
        }}
        onCancel={() => setAsked(null)}
      >
        {asked === null ? null : <Effect ring={asked} />}
        <Problems error={undo.error} />
      </ConfirmDialog>
    </details>
  );
}

/** What moves when a meaning is taken back. */
function Effect({ ring: { sold, before, soldAs, serves } }: { ring: RingNameRow }) {
  const { currency } = useVenue();
  const then =
    before === null
      ? "use only what the name says by itself; if no drink has that name, they are unknown again and what they used counts as unexplained"
      : `count as ${meaningWords(before)} again`;
  return (
    <>
      <p>
        {sold === null
          ? "Nothing was sold under this name. Sales to come then "
          : `${formatNumber(sold.quantity)} sold under it (${formatMoney(sold.net, currency)}, ${formatDate(sold.from)} to ${formatDate(sold.to)}), and sales to come, then `}
        {then}.
      </p>
      {sold === null || soldAs.kind !== "drink" ? null : (
        <p>
          {formatNumber(sold.quantity * serves, Number.isInteger(sold.quantity * serves) ? 0 : 1)} serves of{" "}
          {soldAs.drink} less.
        </p>
      )}
    </>
  );
}

type Shown = { venue: ReturnType<typeof useVenue>; onUndo: (ring: RingNameRow) => void };

function columnsOf({ venue, onUndo }: Shown): Column<RingNameRow>[] {
  return [
    { key: "name", head: "On the till", kind: "text", onPhone: "lead", value: ({ ringName }) => ringName },
    { key: "means", head: "Means", kind: "text", onPhone: "main", value: meaningWords },
    { key: "sold", head: "Sold", kind: "number", value: ({ sold }) => sold?.quantity ?? 0 },
    {
      key: "net",
      head: "Money",
      kind: "number",
      value: ({ sold }) => sold?.net ?? 0,
      show: ({ sold }) => formatMoney(sold?.net ?? 0, venue.currency),
    },
    {
      key: "at",
      head: "Said",
      kind: "text",
      value: ({ enteredAt }) => enteredAt,
      show: ({ enteredAt, enteredBy }) =>
        enteredAt === null ? (
          <span className="soft">came with the book</span>
        ) : (
          `${formatMoment(enteredAt, venue)}, ${enteredBy ?? ""}`
        ),
    },
    {
      key: "acts",
      head: "",
      kind: "text",
      isDrawn: true,
      value: () => null,
      show: (ring) => (
        <Button kind="quiet" aria-label={`Take back ${ring.ringName}`} onClick={() => onUndo(ring)}>
          Take back
        </Button>
      ),
    },
  ];
}
