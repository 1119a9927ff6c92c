import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { answerOf, server } from "../api.ts";
import { formatDate, formatMoment, formatNumber, plural } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { ConfirmDialog } from "../parts/ConfirmDialog.tsx";
import { DataTable } from "../parts/DataTable.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";
import { importsQuery, type SaleImport } from "./sales-queries.ts";

/** Files that were read in, newest first, each of which can be taken back. */
export function Imports() {
  const venue = useVenue();
  const queryClient = useQueryClient();
  const notify = useNotify();
  const { data: imports = [] } = useQuery(importsQuery);
  const [asked, setAsked] = useState<SaleImport | null>(null);
  const undo = useMutation({
    mutationFn: ({ importId }: SaleImport) =>
      answerOf(server.sales.imports[":id"].undo.$post({ param: { id: String(importId) } })),
    onSuccess: async (_, { file }) => {
      setAsked(null);
      notify({ text: `${file} is taken back. Reading the file in again brings it back.` });
      await queryClient.invalidateQueries();
    },
  });
  if (imports.length === 0) return null;
  const columns: Column<SaleImport>[] = [
    { key: "file", head: "File", kind: "text", onPhone: "lead", value: ({ file }) => file },
    {
      key: "days",
      head: "Days",
      kind: "text",
      value: ({ from }) => from,
      show: ({ from, to }) =>
        from === null || to === null ? null : `${formatDate(from)} to ${formatDate(to)}`,
    },
    {
      key: "lines",
      head: "Lines",
      kind: "number",
      value: ({ lines }) => lines,
      show: ({ lines }) => formatNumber(lines),
    },
    {
      key: "refused",
      head: "Refused",
      kind: "number",
      value: ({ refused }) => refused.length,
      show: ({ refused }) => (refused.length === 0 ? null : formatNumber(refused.length)),
    },
    {
      key: "at",
      head: "Read in",
      kind: "text",
      value: ({ importedAt }) => importedAt,
      show: ({ importedAt }) => formatMoment(importedAt, venue),
    },
    {
      key: "undo",
      head: "",
      kind: "text",
      isDrawn: true,
      onPhone: "main",
      value: () => null,
      show: (one) =>
        one.undoneAt === null ? (
          <Button kind="quiet" aria-label={`Take back ${one.file}`} onClick={() => setAsked(one)}>
            Take back
          </Button>
        ) : (
          <span className="soft">taken back</span>
        ),
    },
  ];
  return (
    <section className="imports">
      <h2>Files read in</h2>
      <DataTable
        caption="A line in several files counts once."
        columns={columns}
        rows={imports}
        rowKey={({ importId }) => String(importId)}
        fileName="sales imports"
      />
      <ConfirmDialog
        isOpen={asked !== null}
        title={`Take back ${asked?.file}?`}
        act="Take it back"
        isBusy={undo.isPending}
        onConfirm={() => {
          if (asked !== null) undo.mutate(asked);
        }}
        onCancel={() => setAsked(null)}
      >
        <p>
          Its {plural(asked?.lines ?? 0, "line")} no longer count, and the days are as if the file had never
          come. Lines that another file brings too stay.
        </p>
        <Problems error={undo.error} />
      </ConfirmDialog>
    </section>
  );
}
