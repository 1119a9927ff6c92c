import { Link } from "@tanstack/react-router";
import { useMemo } from "react";
import type { Venue } from "#engine/venue.ts";
import type { VarianceRow } from "../answers.ts";
import { shownWord } from "../book-words.ts";
import { formatAmount, inShownUnit, shownUnit } from "../format.ts";
import { formatMoney } from "../money.ts";
import { DataTable } from "../parts/DataTable.tsx";
import type { Column } from "../parts/table-column.ts";
import { Uncertain } from "../parts/Uncertain.tsx";
import { Verdict } from "../parts/Verdict.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";

/** All items that both counts saw, the most money first. */
export function VarianceTable({ rows, fileName }: { rows: readonly VarianceRow[]; fileName: string }) {
  const venue = useVenue();
  const columns = useMemo(() => varianceColumns(venue), [venue]);
  return (
    <DataTable
      caption={say("variance.table")}
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
      head: say("variance.item"),
      kind: "text",
      onPhone: "lead",
      value: ({ item }) => item,
      show: ({ item }) => (
        <Link to="/variance/$item" params={{ item }}>
          {item}
        </Link>
      ),
    },
    {
      key: "category",
      head: say("variance.category"),
      kind: "text",
      onPhone: "hidden",
      value: ({ category }) => shownWord("category", category),
    },
    {
      key: "verdict",
      head: say("variance.verdict"),
      kind: "text",
      value: ({ verdict }) => say(`parts.${verdict}`).toLocaleLowerCase(),
      show: ({ verdict }) => <Verdict verdict={verdict} />,
    },
    amount("used", say("variance.used"), "hidden"),
    amount("expected", say("variance.expected"), "hidden"),
    amount("losses", say("variance.losses"), "hidden"),
    {
      key: "unexplained",
      head: say("variance.unexplained"),
      kind: "number",
      value: (row) => inShownUnit(row.unexplained, row.base, venue),
      show: ({ unexplained, sd, base }) => <Uncertain amount={unexplained} sd={sd} base={base} signed />,
    },
    {
      key: "sd",
      head: say("variance.standardUncertainty"),
      kind: "number",
      isFileOnly: true,
      value: (row) => inShownUnit(row.sd, row.base, venue),
    },
    {
      key: "unit",
      head: say("variance.unit"),
      kind: "text",
      isFileOnly: true,
      value: (row) => shownUnit(row.base, venue),
    },
    {
      key: "cost",
      head: say("variance.atCostHead"),
      kind: "number",
      onPhone: "main",
      value: ({ cost }) => cost,
      show: ({ cost }) =>
        cost === null ? (
          <span className="soft">{say("parts.noPrice")}</span>
        ) : (
          formatMoney(cost, venue.currency)
        ),
    },
  ];
}
