import { currencyDigits } from "#engine/currency.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";
import type { Venue } from "#engine/venue.ts";
import { formatDate, formatLocal, formatPlain } from "../format.ts";
import { localInputOf } from "../moment.ts";
import { formatMinor } from "../money.ts";
import { DataTable } from "../parts/DataTable.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";

const SHOWN = 8;

/** The first lines of a file as understood. */
export function FirstLines({ lines }: { lines: readonly SaleLine[] }) {
  return (
    <DataTable
      caption={say("sales.firstLines")}
      columns={lineColumns(useVenue())}
      rows={lines.slice(0, SHOWN)}
      rowKey={(line) => String(lines.indexOf(line))}
      fileName="first lines"
      isPlain
    />
  );
}

function lineColumns(venue: Venue): Column<SaleLine>[] {
  const money = (line: SaleLine) => line.netMinor ?? line.grossMinor;
  return [
    {
      key: "ringName",
      head: say("sales.sold"),
      kind: "text",
      onPhone: "lead",
      value: ({ ringName }) => ringName,
    },
    { key: "modifiers", head: say("sales.modifiers"), kind: "text", value: ({ modifiers }) => modifiers },
    {
      key: "quantity",
      head: say("sales.howMany"),
      kind: "number",
      onPhone: "main",
      value: ({ quantity }) => quantity,
      show: ({ quantity }) => formatPlain(quantity).replace("-", "−"),
    },
    {
      key: "net",
      head: say("sales.money"),
      kind: "number",
      value: (line) => (money(line) ?? 0) / 10 ** currencyDigits(venue.currency),
      show: (line) => {
        const minor = money(line);
        return minor === null ? (
          <span className="soft">{say("sales.noMoney")}</span>
        ) : (
          formatMinor(minor, venue.currency)
        );
      },
    },
    {
      key: "at",
      head: say("sales.when"),
      kind: "text",
      value: ({ at, businessDate }) => at ?? businessDate,
      show: ({ at, businessDate }) =>
        at === null ? formatDate(businessDate) : formatLocal(localInputOf(at, venue).replace("T", " ")),
    },
    {
      key: "businessDate",
      head: say("sales.businessDay"),
      kind: "text",
      value: ({ businessDate }) => businessDate,
      show: ({ businessDate }) => formatDate(businessDate),
    },
  ];
}
