import { useQuery } from "@tanstack/react-query";
import { formatDate, formatMoment, formatNumber } from "../format.ts";
import { DataTable } from "../parts/DataTable.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { importsQuery, type SaleImport } from "./sales-queries.ts";
import { TakeBack } from "./TakeBack.tsx";

/** Files that were read in, newest first, each of which can be taken back. */
export function Imports() {
  const venue = useVenue();
  const { data: imports = [] } = useQuery(importsQuery);
  if (imports.length === 0) return null;
  const columns: Column<SaleImport>[] = [
    { key: "file", head: say("sales.file"), kind: "text", onPhone: "lead", value: ({ file }) => file },
    {
      key: "days",
      head: say("sales.days"),
      kind: "text",
      value: ({ from }) => from,
      show: ({ from, to }) =>
        from === null || to === null
          ? null
          : from === to
            ? formatDate(from)
            : say("sales.fromTo", { from: formatDate(from), to: formatDate(to) }),
    },
    {
      key: "lines",
      head: say("sales.lines"),
      kind: "number",
      value: ({ lines }) => lines,
      show: ({ lines }) => formatNumber(lines),
    },
    {
      key: "refused",
      head: say("sales.refused"),
      kind: "number",
      value: ({ refused }) => refused.length,
      show: ({ refused }) => (refused.length === 0 ? null : formatNumber(refused.length)),
    },
    {
      key: "at",
      head: say("sales.readInAt"),
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
          <TakeBack one={one} />
        ) : (
          <span className="soft">{say("sales.takenBack")}</span>
        ),
    },
  ];
  return (
    <section className="imports">
      <h2>{say("sales.filesReadIn")}</h2>
      <DataTable
        caption={say("sales.filesCaption")}
        columns={columns}
        rows={imports}
        rowKey={({ importId }) => String(importId)}
        fileName="sales imports"
      />
    </section>
  );
}
