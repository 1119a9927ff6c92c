import "./data-table.css";
import { type ReactNode, useId, useState } from "react";
import { say } from "../texts/say.ts";
import { TableHead } from "./TableHead.tsx";
import { TableTools } from "./TableTools.tsx";
import type { Column } from "./table-column.ts";
import { filterRows, type Sort, sortRows } from "./table-sort.ts";

type Props<Row> = {
  caption: string;
  columns: readonly Column<Row>[];
  rows: readonly Row[];
  rowKey: (row: Row) => string;
  /** Name of the file, without ending. */
  fileName: string;
  initialSort?: Sort;
  /** Drawn instead of the body when there are no rows at all. */
  empty?: ReactNode;
  /** Leaves out filter and downloads, for short tables inside a page. */
  isPlain?: boolean;
  /** More ways to narrow the rows, beside the filter. */
  filters?: ReactNode;
  /** Cells of a last, double-ruled row by column key. */
  totals?: Record<string, ReactNode>;
};

/** A table that sorts by its heads, filters as one types, leaves as TSV or CSV, and folds to two lines a row on a phone. */
export function DataTable<Row>(props: Props<Row>) {
  const { caption, rows, rowKey, fileName, initialSort, empty, isPlain = false, filters, totals } = props;
  const columns = props.columns.filter(({ isFileOnly }) => !isFileOnly);
  const [sort, setSort] = useState<Sort | null>(initialSort ?? null);
  const [typed, setTyped] = useState("");
  const captionId = useId();
  if (rows.length === 0 && empty !== undefined) return <>{empty}</>;
  const shown = sortRows(filterRows(rows, columns, typed), columns, sort);
  return (
    <div className="data-table">
      {isPlain ? null : (
        <TableTools
          {...{ fileName, sort, typed, filters }}
          columns={props.columns}
          rows={shown}
          rowsInAll={rows.length}
          onSort={setSort}
          onType={setTyped}
        />
      )}
      {/* Roles are spelled out because the phone's layout takes the table's own away from some screen readers. */}
      {/* biome-ignore lint/a11y/noRedundantRoles: see above */}
      <table role="table" aria-labelledby={captionId}>
        <caption id={captionId}>{caption}</caption>
        <TableHead {...{ columns, sort }} onSort={setSort} />
        {/* biome-ignore lint/a11y/noRedundantRoles: see above */}
        <tbody role="rowgroup">
          {shown.map((row) => (
            <TableRow key={rowKey(row)} row={row} columns={columns} />
          ))}
        </tbody>
        {totals === undefined ? null : <TableTotals columns={columns} totals={totals} />}
      </table>
      {shown.length > 0 ? null : (
        <p className="soft">{typed.trim() === "" ? say("parts.noRows") : say("parts.noRow", { typed })}</p>
      )}
    </div>
  );
}

function TableRow<Row>({ row, columns }: { row: Row; columns: readonly Column<Row>[] }) {
  return (
    // biome-ignore lint/a11y/noRedundantRoles: the phone's layout takes the row's own role away
    <tr role="row">
      {columns.map((column) => (
        <TableCell key={column.key} column={column}>
          {column.show === undefined ? column.value(row) : column.show(row)}
        </TableCell>
      ))}
    </tr>
  );
}

function TableTotals<Row>({
  columns,
  totals,
}: {
  columns: readonly Column<Row>[];
  totals: Record<string, ReactNode>;
}) {
  return (
    // biome-ignore lint/a11y/noRedundantRoles: the phone's layout takes the group's own role away
    <tfoot role="rowgroup">
      {/* biome-ignore lint/a11y/noRedundantRoles: see above */}
      <tr role="row">
        {columns.map((column) => (
          <TableCell
            key={column.key}
            column={totals[column.key] === undefined ? column : shownOnPhone(column)}
          >
            {totals[column.key]}
          </TableCell>
        ))}
      </tr>
    </tfoot>
  );
}

/** A total is worth its place on a phone even where its column is not. */
function shownOnPhone<Row>(column: Column<Row>): Column<Row> {
  return column.onPhone === "lead" ? column : { ...column, onPhone: "main" };
}

function TableCell<Row>({ column, children }: { column: Column<Row>; children: ReactNode }) {
  const place = column.onPhone ?? "detail";
  const label = column.unit ? `${column.head} (${column.unit})` : column.head;
  const wide = column.isWideOnly ? "wide-only" : "";
  const className = `cell-${column.kind} phone-${place} ${wide} ${isNothing(children) ? "cell-empty" : ""}`;
  if (place === "lead") {
    return (
      // biome-ignore lint/a11y/noRedundantRoles: the phone's layout takes the cell's own role away
      <th role="rowheader" scope="row" className={className}>
        {children}
      </th>
    );
  }
  return (
    // biome-ignore lint/a11y/noRedundantRoles: the phone's layout takes the cell's own role away
    <td role="cell" className={className} data-label={label}>
      {children}
    </td>
  );
}

function isNothing(node: ReactNode): boolean {
  return node === null || node === undefined || node === "" || node === false;
}
