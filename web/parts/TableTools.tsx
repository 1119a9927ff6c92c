import { type ReactNode, useState } from "react";
import { say } from "../texts/say.ts";
import { Button } from "./Button.tsx";
import { Field, Select } from "./Field.tsx";
import { saveCsv } from "./save-file.ts";
import type { Column } from "./table-column.ts";
import type { Sort } from "./table-sort.ts";
import { fileRows, tabText } from "./table-text.ts";

type Props<Row> = {
  columns: readonly Column<Row>[];
  rows: readonly Row[];
  rowsInAll: number;
  fileName: string;
  sort: Sort | null;
  typed: string;
  filters?: ReactNode;
  onSort: (sort: Sort | null) => void;
  onType: (typed: string) => void;
};

/** Filter, order (on a phone, where the heads are folded away), copy and download: of the rows as they stand. */
export function TableTools<Row>(props: Props<Row>) {
  const { columns, rows, rowsInAll, fileName, sort, typed, filters, onSort, onType } = props;
  return (
    <div className="table-tools no-print">
      <Field
        label={say("parts.filter")}
        type="search"
        value={typed}
        autoComplete="off"
        onChange={(event) => onType(event.target.value)}
      />
      {filters}
      <Select
        label={say("parts.orderBy")}
        className="only-phone"
        value={sort === null ? "" : `${sort.key} ${sort.isDescending ? "down" : "up"}`}
        options={sortChoices(columns)}
        onChange={(event) => onSort(sortOf(event.target.value))}
      />
      <span className="table-count" role="status">
        {rows.length === rowsInAll
          ? say("parts.rows", { count: rowsInAll })
          : say("parts.rowsOf", { shown: rows.length, count: rowsInAll })}
      </span>
      <CopyButton text={() => tabText(fileRows(columns, rows))} />
      <Button onClick={() => void saveCsv(fileName, fileRows(columns, rows))}>CSV</Button>
    </div>
  );
}

/** Copies a text and says so on itself. */
export function CopyButton({ text, label = say("parts.copy") }: { text: () => string; label?: string }) {
  const [isCopied, setCopied] = useState(false);
  const copy = async () => {
    await navigator.clipboard.writeText(text());
    setCopied(true);
    setTimeout(() => setCopied(false), 2500);
  };
  return <Button onClick={() => void copy()}>{isCopied ? say("parts.copied") : label}</Button>;
}

function sortChoices<Row>(columns: readonly Column<Row>[]) {
  const sortable = columns.filter(({ isDrawn, isFileOnly }) => !isDrawn && !isFileOnly);
  return [
    { value: "", label: say("parts.asItStands") },
    ...sortable.flatMap(({ key, head, kind }) =>
      kind === "number"
        ? [
            { value: `${key} down`, label: say("parts.largestFirst", { head }) },
            { value: `${key} up`, label: say("parts.smallestFirst", { head }) },
          ]
        : [{ value: `${key} up`, label: head }],
    ),
  ];
}

function sortOf(value: string): Sort | null {
  const [key, way] = value.split(" ");
  return key === undefined || key === "" ? null : { key, isDescending: way === "down" };
}
