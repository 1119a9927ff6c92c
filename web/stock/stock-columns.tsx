import type { Venue } from "#engine/venue.ts";
import type { StockRow } from "../answers.ts";
import { shownWord } from "../book-words.ts";
import { formatContainers } from "../figures.ts";
import { formatAmount, inShownUnit, shownUnit } from "../format.ts";
import { formatMoney } from "../money.ts";
import { LevelLine } from "../parts/LevelLine.tsx";
import type { Column } from "../parts/table-column.ts";
import { say } from "../texts/say.ts";

const DAY_MS = 86_400_000;

/** The columns of the stock table as a venue reads amounts; days since counted are whole days before `at`. */
export function stockColumns(venue: Venue, at: string): Column<StockRow>[] {
  const shown = (row: StockRow, amount: number | null) =>
    amount === null ? null : inShownUnit(amount, row.base, venue);
  return [
    { key: "item", head: say("stock.item"), kind: "text", value: (row) => row.item, onPhone: "lead" },
    {
      key: "category",
      head: say("stock.category"),
      kind: "text",
      value: (row) => shownWord("category", row.category),
      onPhone: "hidden",
    },
    {
      key: "areas",
      head: say("stock.areas"),
      kind: "text",
      value: (row) => row.areas.join(", "),
      isFileOnly: true,
    },
    {
      key: "quantity",
      head: say("stock.onHand"),
      kind: "number",
      onPhone: "main",
      value: (row) => shown(row, row.quantity),
      show: (row) => <OnHand row={row} venue={venue} />,
    },
    {
      key: "unit",
      head: say("stock.unit"),
      kind: "text",
      value: (row) => shownUnit(row.base, venue),
      isFileOnly: true,
    },
    {
      key: "level",
      head: say("stock.level"),
      kind: "text",
      isDrawn: true,
      value: () => null,
      show: (row) => (row.quantity === null ? null : <Level row={row} quantity={row.quantity} />),
    },
    {
      key: "par",
      head: say("stock.par"),
      kind: "number",
      value: (row) => shown(row, row.par),
      show: (row) => (row.par === null ? <None /> : <Par row={row} par={row.par} venue={venue} />),
    },
    {
      key: "value",
      head: say("stock.value"),
      kind: "number",
      onPhone: "hidden",
      value: (row) => row.value,
      show: (row) => (row.value === null ? <None /> : formatMoney(row.value, venue.currency)),
    },
    {
      key: "counted",
      head: say("stock.counted"),
      unit: say("stock.daysAgo"),
      kind: "number",
      isWideOnly: true,
      onPhone: "hidden",
      value: (row) => (row.countedAt === null ? null : daysSince(row.countedAt, at)),
      show: (row) => (row.countedAt === null ? say("stock.never") : daysSince(row.countedAt, at)),
    },
  ];
}

function OnHand({ row, venue }: { row: StockRow; venue: Venue }) {
  if (row.quantity === null) return <span className="soft">{say("stock.notCounted")}</span>;
  const inContainers = formatContainers(row.quantity, row, venue);
  const inUnit = formatAmount(row.quantity, row.base, venue);
  return (
    <span className="number" title={inUnit}>
      {inContainers}
      {inContainers === inUnit ? null : <span className="visually-hidden">, {inUnit}</span>}
    </span>
  );
}

function Level({ row: { sd, par, expectedUse, base }, quantity }: { row: StockRow; quantity: number }) {
  return <LevelLine onHand={quantity} {...{ sd, par, expectedUse, base }} />;
}

/** A par as people say it, in whole bottles or cases; exactly, and why, behind it. */
function Par({
  row: { base, parInPacks, parWhy },
  par,
  venue,
}: {
  row: StockRow;
  par: number;
  venue: Venue;
}) {
  const exact = formatAmount(par, base, venue);
  if (parInPacks === null) return exact;
  const why = `${exact}: ${parWhy ?? ""}`;
  return (
    <span className="number" title={why}>
      {say("stock.packs", parInPacks)}
      <span className="visually-hidden">, {why}</span>
    </span>
  );
}

function None() {
  return <span className="soft">{say("stock.none")}</span>;
}

function daysSince(countedAt: string, at: string): number {
  return Math.max(0, Math.floor((Date.parse(at) - Date.parse(countedAt)) / DAY_MS));
}
