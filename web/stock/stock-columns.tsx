import type { Venue } from "#engine/venue.ts";
import type { StockRow } from "../answers.ts";
import {
  formatAmount,
  formatContainers,
  formatMoney,
  formatNumber,
  inShownUnit,
  shownUnit,
} from "../format.ts";
import { LevelLine } from "../parts/LevelLine.tsx";
import type { Column } from "../parts/table-column.ts";

const DAY_MS = 86_400_000;

/** The columns of the stock table as a venue reads amounts; days since counted are whole days before `at`. */
export function stockColumns(venue: Venue, at: string): Column<StockRow>[] {
  const shown = (row: StockRow, amount: number | null) =>
    amount === null ? null : inShownUnit(amount, row.base, venue);
  return [
    { key: "item", head: "Item", kind: "text", value: (row) => row.item, onPhone: "lead" },
    { key: "category", head: "Category", kind: "text", value: (row) => row.category, onPhone: "hidden" },
    {
      key: "areas",
      head: "Areas",
      kind: "text",
      value: (row) => row.areas.join(", "),
      isFileOnly: true,
    },
    {
      key: "quantity",
      head: "On hand",
      kind: "number",
      onPhone: "main",
      value: (row) => shown(row, row.quantity),
      show: (row) => <OnHand row={row} venue={venue} />,
    },
    { key: "unit", head: "Unit", kind: "text", value: (row) => shownUnit(row.base, venue), isFileOnly: true },
    {
      key: "level",
      head: "Level",
      kind: "text",
      isDrawn: true,
      value: () => null,
      show: (row) => (row.quantity === null ? null : <Level row={row} quantity={row.quantity} />),
    },
    {
      key: "par",
      head: "Par",
      kind: "number",
      value: (row) => shown(row, row.par),
      show: (row) => (row.par === null ? <None /> : <Par row={row} par={row.par} venue={venue} />),
    },
    {
      key: "value",
      head: "Value",
      kind: "number",
      onPhone: "hidden",
      value: (row) => row.value,
      show: (row) => (row.value === null ? <None /> : formatMoney(row.value, venue.currency)),
    },
    {
      key: "counted",
      head: "Counted",
      unit: "days ago",
      kind: "number",
      isWideOnly: true,
      onPhone: "hidden",
      value: (row) => (row.countedAt === null ? null : daysSince(row.countedAt, at)),
      show: (row) => (row.countedAt === null ? "never" : daysSince(row.countedAt, at)),
    },
  ];
}

function OnHand({ row, venue }: { row: StockRow; venue: Venue }) {
  if (row.quantity === null) return <span className="soft">not counted</span>;
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
  const { quantity, of, pack } = parInPacks;
  const unit = of === "container" ? "×" : quantity === 1 ? "case of" : "cases of";
  const why = `${exact}: ${parWhy ?? ""}`;
  return (
    <span className="number" title={why}>
      {formatNumber(quantity)} {unit} {pack}
      <span className="visually-hidden">, {why}</span>
    </span>
  );
}

function None() {
  return <span className="soft">none</span>;
}

function daysSince(countedAt: string, at: string): number {
  return Math.max(0, Math.floor((Date.parse(at) - Date.parse(countedAt)) / DAY_MS));
}
