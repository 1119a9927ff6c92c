import { currencyDigits } from "#engine/currency.ts";
import type { ColumnFinding } from "#engine/sales/read/columns.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";
import type { Venue } from "#engine/venue.ts";
import { formatDate, formatLocal, formatMinor, formatMoney, formatNumber, plural } from "../format.ts";
import { localInputOf } from "../moment.ts";
import { Button } from "../parts/Button.tsx";
import { DataTable } from "../parts/DataTable.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";
import { roleWords, sureWords } from "./column-words.ts";
import { RefusedRows } from "./ReadFiles.tsx";
import type { SalesPreview } from "./sales-queries.ts";

type Props = {
  preview: SalesPreview;
  /** Files chosen together with this one that come after it. */
  filesLeft: number;
  isBusy: boolean;
  onTake: () => void;
  onLeave: () => void;
};

/** A file as it would be read: columns, first lines, what is refused, and what is new. */
export function Preview({ preview, filesLeft, isBusy, onTake, onLeave }: Props) {
  const { file, columns, question, lines, refused, change, unmapped } = preview;
  const venue = useVenue();
  return (
    <div className="preview">
      <h2 tabIndex={-1}>{file}</h2>
      {question === null ? null : (
        <div className="preview-question" role="alert">
          <p>
            <strong>A question before it can be read.</strong> {question}
          </p>
          <p>Nothing was guessed and nothing read in.</p>
        </div>
      )}
      {change === null ? null : (
        <p className="preview-sum">
          {plural(change.lines, "line")} of {daysWords(change.daysTouched)}:{" "}
          <strong>{formatNumber(change.new)} new</strong>, {formatNumber(change.known)} known already.
          {unmapped.length === 0 ? null : ` ${unknownWords(unmapped, venue)}`}
        </p>
      )}
      <div className="preview-acts">
        <Button kind="main" disabled={isBusy || change === null} onClick={onTake}>
          {isBusy ? "Reading it in …" : "Read it in"}
        </Button>
        <Button onClick={onLeave}>{filesLeft > 0 ? `Leave it, next of ${filesLeft}` : "Leave it"}</Button>
      </div>
      <ColumnsFound columns={columns} />
      {lines.length === 0 ? null : (
        <DataTable
          caption="The first lines as understood"
          columns={lineColumns(venue)}
          rows={lines.slice(0, 8)}
          rowKey={(line) => String(lines.indexOf(line))}
          fileName="first lines"
          isPlain
        />
      )}
      {refused.length === 0 ? null : (
        <div className="refused">
          <h3>Rows that cannot be read</h3>
          <RefusedRows refused={refused} />
        </div>
      )}
    </div>
  );
}

function ColumnsFound({ columns }: { columns: readonly ColumnFinding[] }) {
  return (
    <dl className="columns-found">
      {columns.map((column, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: headings may repeat; their place in the file is what they are
        <div key={place} className={sureWords(column) === "" ? "column-unused" : ""}>
          <dt>{column.heading === "" ? "(no heading)" : column.heading}</dt>
          <dd>
            {roleWords(column.role)} <span className="soft">{sureWords(column)}</span>
          </dd>
        </div>
      ))}
    </dl>
  );
}

function lineColumns(venue: Venue): Column<SaleLine>[] {
  const money = (line: SaleLine) => line.netMinor ?? line.grossMinor;
  return [
    { key: "ringName", head: "Sold", kind: "text", onPhone: "lead", value: ({ ringName }) => ringName },
    { key: "modifiers", head: "Modifiers", kind: "text", value: ({ modifiers }) => modifiers },
    { key: "quantity", head: "How many", kind: "number", onPhone: "main", value: ({ quantity }) => quantity },
    {
      key: "net",
      head: "Money",
      kind: "number",
      value: (line) => (money(line) ?? 0) / 10 ** currencyDigits(venue.currency),
      show: (line) => {
        const minor = money(line);
        return minor === null ? <span className="soft">none</span> : formatMinor(minor, venue.currency);
      },
    },
    {
      key: "at",
      head: "When",
      kind: "text",
      value: ({ at, businessDate }) => at ?? businessDate,
      show: ({ at, businessDate }) =>
        at === null ? formatDate(businessDate) : formatLocal(localInputOf(at, venue).replace("T", " ")),
    },
    {
      key: "businessDate",
      head: "Business day",
      kind: "text",
      value: ({ businessDate }) => businessDate,
      show: ({ businessDate }) => formatDate(businessDate),
    },
  ];
}

function daysWords(days: readonly string[]): string {
  const [first] = days;
  const last = days.at(-1);
  if (first === undefined || last === undefined) return "no day";
  return days.length === 1
    ? formatDate(first)
    : `${days.length} days, ${formatDate(first)} to ${formatDate(last)}`;
}

function unknownWords(unmapped: SalesPreview["unmapped"], { currency }: Venue): string {
  const net = unmapped.reduce((sum, one) => sum + one.net, 0);
  return `${plural(unmapped.length, "name")} unknown to the book, ${formatMoney(net, currency)} in all; it asks about them below.`;
}
