import { useQuery } from "@tanstack/react-query";
import { formatDate, formatMoment, formatNumber } from "../format.ts";
import { DataTable } from "../parts/DataTable.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";
import { importsQuery, type SaleImport } from "./sales-queries.ts";
import { TakeBack } from "./TakeBack.tsx";

/** Files that were read in, newest first, each of which can be taken back. */
export function Imports() {
  const venue = useVenue();
  const { data: imports = [] } = useQuery(importsQuery);
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
        one.undoneAt === null ? <TakeBack one={one} /> : <span className="soft">taken back</span>,
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
    </section>
  );
}
