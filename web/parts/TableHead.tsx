import { ArrowDown, ArrowUp } from "lucide-react";
import { say } from "../texts/say.ts";
import type { Column } from "./table-column.ts";
import type { Sort } from "./table-sort.ts";

type Props<Row> = { columns: readonly Column<Row>[]; sort: Sort | null; onSort: (sort: Sort) => void };

/** The sticky head; each name is a button that sorts, the other way on the second press. */
export function TableHead<Row>({ columns, sort, onSort }: Props<Row>) {
  return (
    // biome-ignore lint/a11y/noRedundantRoles: the phone's layout takes the group's own role away
    <thead role="rowgroup">
      {/* biome-ignore lint/a11y/noRedundantRoles: see above */}
      <tr role="row">
        {columns.map((column) => (
          <HeadCell key={column.key} column={column} sort={sort} onSort={onSort} />
        ))}
      </tr>
    </thead>
  );
}

type CellProps<Row> = { column: Column<Row>; sort: Sort | null; onSort: (sort: Sort) => void };

function HeadCell<Row>({ column, sort, onSort }: CellProps<Row>) {
  const { key, head, unit, kind, isDrawn, isWideOnly } = column;
  const className = `cell-${kind} ${isWideOnly ? "wide-only" : ""}`;
  const isSorted = sort?.key === key;
  const order = isSorted ? (sort.isDescending ? "descending" : "ascending") : "none";
  const name = (
    <>
      {head}
      {unit === undefined ? null : <span className="head-unit"> {unit}</span>}
    </>
  );
  if (isDrawn) {
    return (
      // biome-ignore lint/a11y/noRedundantRoles: the phone's layout takes the cell's own role away
      <th role="columnheader" scope="col" className={className}>
        <span className="head-name">
          {head === "" ? <span className="visually-hidden">{say("parts.acts")}</span> : name}
        </span>
      </th>
    );
  }
  // Numbers are mostly looked at from the largest down, names from A.
  const first = kind === "number";
  return (
    // biome-ignore lint/a11y/noRedundantRoles: the phone's layout takes the cell's own role away
    <th role="columnheader" scope="col" aria-sort={order} className={className}>
      <button
        type="button"
        className="head-name"
        onClick={() => onSort({ key, isDescending: isSorted ? !sort.isDescending : first })}
      >
        {name}
        {isSorted ? <SortMark isDescending={sort.isDescending} /> : null}
      </button>
    </th>
  );
}

function SortMark({ isDescending }: { isDescending: boolean }) {
  const Icon = isDescending ? ArrowDown : ArrowUp;
  return <Icon aria-hidden="true" size={14} />;
}
