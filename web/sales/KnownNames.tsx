import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { answerOf, server } from "../api.ts";
import { formatDate, formatMoment, formatNumber } from "../format.ts";
import { formatMoney } from "../money.ts";
import { Button } from "../parts/Button.tsx";
import { ConfirmDialog } from "../parts/ConfirmDialog.tsx";
import { DataTable } from "../parts/DataTable.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
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
      const name = ring.ringName;
      const text =
        means === null
          ? say("sales.noMeaning", { name })
          : say("sales.meansAgain", { name, meaning: meaningWords(means) });
      notify({ text, undo: () => void putBack(ring) });
      await queryClient.invalidateQueries();
    },
  });
  if (names === undefined || names.length === 0) return null;
  const columns = columnsOf({ venue, onUndo: setAsked });
  return (
    <details className="known-names">
      <summary>{say("sales.meaningsGiven", { count: names.length })}</summary>
      <DataTable
        caption={say("sales.meaningsCaption")}
        columns={columns}
        rows={names}
        rowKey={({ ringName }) => ringName}
        fileName="ring-names"
      />
      <ConfirmDialog
        isOpen={asked !== null}
        title={say("sales.takeBackMeaning", { name: asked?.ringName ?? "" })}
        act={say("sales.takeItBack")}
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
    before === null ? { hasBefore: "no", before: "" } : { hasBefore: "yes", before: meaningWords(before) };
  return (
    <>
      <p>
        {sold === null
          ? say("sales.effectUnsold", then)
          : say("sales.effectSold", {
              ...then,
              quantity: formatNumber(sold.quantity),
              money: formatMoney(sold.net, currency),
              from: formatDate(sold.from),
              to: formatDate(sold.to),
            })}
      </p>
      {sold === null || soldAs.kind !== "drink" ? null : (
        <p>
          {say("sales.effectServes", {
            serves: formatNumber(sold.quantity * serves, Number.isInteger(sold.quantity * serves) ? 0 : 1),
            drink: soldAs.drink,
          })}
        </p>
      )}
    </>
  );
}

type Shown = { venue: ReturnType<typeof useVenue>; onUndo: (ring: RingNameRow) => void };

function columnsOf({ venue, onUndo }: Shown): Column<RingNameRow>[] {
  return [
    {
      key: "name",
      head: say("sales.onTheTill"),
      kind: "text",
      onPhone: "lead",
      value: ({ ringName }) => ringName,
    },
    { key: "means", head: say("sales.means"), kind: "text", onPhone: "main", value: meaningWords },
    { key: "sold", head: say("sales.sold"), kind: "number", value: ({ sold }) => sold?.quantity ?? 0 },
    {
      key: "net",
      head: say("sales.money"),
      kind: "number",
      value: ({ sold }) => sold?.net ?? 0,
      show: ({ sold }) => formatMoney(sold?.net ?? 0, venue.currency),
    },
    {
      key: "at",
      head: say("sales.said"),
      kind: "text",
      value: ({ enteredAt }) => enteredAt,
      show: ({ enteredAt, enteredBy }) =>
        enteredAt === null ? (
          <span className="soft">{say("sales.cameWithBook")}</span>
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
        <Button
          kind="quiet"
          aria-label={say("sales.takeBackOne", { name: ring.ringName })}
          onClick={() => onUndo(ring)}
        >
          {say("sales.takeBack")}
        </Button>
      ),
    },
  ];
}
