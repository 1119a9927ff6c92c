import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import type { CatalogueAnswer } from "../answers.ts";
import { answerOf, server } from "../api.ts";
import { formatNumber } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { ConfirmDialog } from "../parts/ConfirmDialog.tsx";
import { DataTable } from "../parts/DataTable.tsx";
import { Empty } from "../parts/Empty.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import type { Column } from "../parts/table-column.ts";
import { catalogueQuery } from "../queries.ts";

type RingName = CatalogueAnswer["ringNames"][number];

/** The meanings people gave to the till's names; each can be taken back. */
export function KnownNames() {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const { data: catalogue } = useQuery(catalogueQuery);
  const [asked, setAsked] = useState<RingName | null>(null);
  const remove = useMutation({
    mutationFn: ({ ringName }: RingName) =>
      answerOf(server["ring-names"].remove.$post({ json: { ringName } })),
    onSuccess: async (_, ring) => {
      setAsked(null);
      notify({
        text: `“${ring.ringName}” has no meaning given any more.`,
        undo: () => void putBack(ring).then(() => queryClient.invalidateQueries()),
      });
      await queryClient.invalidateQueries();
    },
  });
  if (catalogue === undefined || catalogue.ringNames.length === 0) return null;
  return (
    <details className="known-names">
      <summary>Meanings given: {catalogue.ringNames.length}</summary>
      <DataTable
        caption="What the till's names mean. A name that is a drink's own needs no row here."
        columns={columnsOf(setAsked)}
        rows={catalogue.ringNames}
        rowKey={({ ringName }) => ringName}
        fileName="ring-names"
        empty={
          <Empty title="No meaning given">
            <p>Names that are the drinks’ own need none.</p>
          </Empty>
        }
      />
      <ConfirmDialog
        isOpen={asked !== null}
        title={`Take back what “${asked?.ringName ?? ""}” means?`}
        act="Take it back"
        isBusy={remove.isPending}
        onConfirm={() => {
          if (asked !== null) remove.mutate(asked);
        }}
        onCancel={() => setAsked(null)}
      >
        <p>
          Its sales, past ones too, then use only what the name says by itself; if no drink has that name,
          they are unknown again and what they used counts as unexplained.
        </p>
        <Problems error={remove.error} />
      </ConfirmDialog>
    </details>
  );
}

function putBack(ring: RingName): Promise<unknown> {
  return answerOf(server["ring-names"].$post({ json: ring }));
}

function columnsOf(onRemove: (ring: RingName) => void): Column<RingName>[] {
  return [
    { key: "name", head: "On the till", kind: "text", onPhone: "lead", value: ({ ringName }) => ringName },
    { key: "means", head: "Means", kind: "text", onPhone: "main", value: meaningOf },
    {
      key: "acts",
      head: "",
      kind: "text",
      isDrawn: true,
      value: () => null,
      show: (ring) => (
        <Button kind="quiet" aria-label={`Take back ${ring.ringName}`} onClick={() => onRemove(ring)}>
          Take back
        </Button>
      ),
    },
  ];
}

function meaningOf({ soldAs, serves, amount, unit }: RingName): string {
  if (soldAs.kind === "ignore") return "nothing: left out";
  if (soldAs.kind === "drink")
    return serves === 1
      ? soldAs.drink
      : `${soldAs.drink}, ${formatNumber(serves, serves % 1 === 0 ? 0 : 1)} serves`;
  const poured =
    amount === null
      ? "one container"
      : `${formatNumber(amount, amount % 1 === 0 ? 0 : 1)} ${unit ?? ""}`.trim();
  return `${soldAs.item}, ${poured}`;
}
