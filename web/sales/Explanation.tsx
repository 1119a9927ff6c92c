import { useEffect, useRef } from "react";
import type { Venue } from "#engine/venue.ts";
import { formatAmountBare, formatNumber, shownUnit } from "../format.ts";
import { DataTable } from "../parts/DataTable.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { Explained } from "./Explained.tsx";
import type { SalesReport } from "./sales-queries.ts";
import { TakeBack } from "./TakeBack.tsx";

const SHOWN = 8;

/** What an import did, and what moved in expected use because of it; it can be taken back at once. */
export function Explanation({ report }: { report: SalesReport }) {
  const { file, moved, importId } = report;
  const venue = useVenue();
  const heading = useRef<HTMLHeadingElement>(null);
  // The button that read the file in is gone; whoever went on elsewhere meanwhile stays there.
  useEffect(() => {
    if (document.activeElement === document.body) heading.current?.focus({ preventScroll: true });
  }, []);
  return (
    <article className="explanation" aria-label={say("sales.cameOf", { file })}>
      <div className="explanation-head">
        <h2 ref={heading} tabIndex={-1}>
          {say("sales.isIn", { file })}
        </h2>
        {importId === null ? null : <TakeBack one={{ ...report, importId }} />}
      </div>
      <Explained report={report} />
      {moved.length === 0 ? null : (
        <DataTable
          caption={
            moved.length > SHOWN
              ? say("sales.movedMost", { shown: SHOWN, count: formatNumber(moved.length) })
              : say("sales.moved")
          }
          columns={movedColumns(venue)}
          rows={moved.slice(0, SHOWN)}
          rowKey={({ item }) => item}
          fileName="expected use moved"
          isPlain
        />
      )}
    </article>
  );
}

type Moved = SalesReport["moved"][number];

function movedColumns(venue: Venue): Column<Moved>[] {
  const amount = (value: number, { base }: Moved) => formatAmountBare(value, base, venue);
  return [
    { key: "item", head: say("stock.item"), kind: "text", onPhone: "lead", value: ({ item }) => item },
    {
      key: "before",
      head: say("sales.before"),
      kind: "number",
      value: ({ before }) => before,
      show: (row) => amount(row.before, row),
    },
    {
      key: "after",
      head: say("sales.now"),
      kind: "number",
      onPhone: "main",
      value: ({ after }) => after,
      show: (row) => amount(row.after, row),
    },
    {
      key: "unit",
      head: say("stock.unit"),
      kind: "text",
      value: ({ base }) => (base === "each" ? say("variance.each") : shownUnit(base, venue)),
    },
  ];
}
