import { Link } from "@tanstack/react-router";
import { useMemo } from "react";
import type { Venue } from "#engine/venue.ts";
import type { VarianceRow } from "../answers.ts";
import { formatAmount, formatMoney, inShownUnit, shownUnit } from "../format.ts";
import { DataTable } from "../parts/DataTable.tsx";
import type { Column } from "../parts/table-column.ts";
import { Uncertain } from "../parts/Uncertain.tsx";
import { Verdict } from "../parts/Verdict.tsx";
import { useVenue } from "../shell/venue.tsx";

/** All items that both counts saw, the most money first. */
export function VarianceTable({ rows, fileName }: { rows: readonly VarianceRow[]; fileName: string }) {
  const venue = useVenue();
  const columns = useMemo(() => varianceColumns(venue), [venue]);
  return (
    <DataTable
      caption="Unexplained = used − expected − recorded losses. Plus: more went than is explained; minus: less."
      columns={columns}
      rows={rows}
      rowKey={({ item }) => item}
      fileName={fileName}
    />
  );
}

function varianceColumns(venue: Venue): Column<VarianceRow>[] {
  const amount = (
    key: "used" | "expected" | "losses",
    head: string,
    onPhone: "detail" | "hidden",
  ): Column<VarianceRow> => ({
    key,
    head,
    kind: "number",
    onPhone,
    value: (row) => inShownUnit(row[key], row.base, venue),
    show: (row) => <span className="number">{formatAmount(row[key], row.base, venue)}</span>,
  });
  return [
    {
      key: "item",
      head: "Item",
      kind: "text",
      onPhone: "lead",
      value: ({ item }) => item,
      show: ({ item }) => (
        <Link to="/variance/$item" params={{ item }}>
          {item}
        </Link>
      ),
    },
    { key: "category", head: "Category", kind: "text", onPhone: "hidden", value: ({ category }) => category },
    {
      key: "verdict",
      head: "Verdict",
      kind: "text",
      value: ({ verdict }) => verdict,
      show: ({ verdict }) => <Verdict verdict={verdict} />,
    },
    amount("used", "Used", "hidden"),
    amount("expected", "Expected", "hidden"),
    amount("losses", "Losses", "hidden"),
    {
      key: "unexplained",
      head: "Unexplained",
      kind: "number",
      value: (row) => inShownUnit(row.unexplained, row.base, venue),
      show: ({ unexplained, sd, base }) => <Uncertain amount={unexplained} sd={sd} base={base} signed />,
    },
    {
      key: "sd",
      head: "Standard uncertainty",
      kind: "number",
      isFileOnly: true,
      value: (row) => inShownUnit(row.sd, row.base, venue),
    },
    { key: "unit", head: "Unit", kind: "text", isFileOnly: true, value: (row) => shownUnit(row.base, venue) },
    {
      key: "cost",
      head: "At cost",
      kind: "number",
      onPhone: "main",
      value: ({ cost }) => cost,
      show: ({ cost }) =>
        cost === null ? <span className="soft">no price</span> : formatMoney(cost, venue.currency),
    },
  ];
}
