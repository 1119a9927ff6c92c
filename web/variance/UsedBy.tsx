import type { BaseUnit } from "#engine/measure/units.ts";
import type { DrinkUse } from "#engine/variance/drinks-that-used.ts";
import { formatAmount, formatNumber, inShownUnit, shownUnit } from "../format.ts";
import { DataTable } from "../parts/DataTable.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";

type Props = { drinks: readonly DrinkUse[]; base: BaseUnit; item: string };

const KINDS = { sale: "drink", batch: "batch" } as const;

/** The drinks sold and batches made that make up the expected use, largest first. */
export function UsedBy({ drinks, base, item }: Props) {
  const venue = useVenue();
  const amount = (value: number) => formatAmount(value, base, venue);
  const columns: Column<DrinkUse>[] = [
    { key: "what", head: "Drink or batch", kind: "text", onPhone: "lead", value: ({ what }) => what },
    { key: "unit", head: "Unit", kind: "text", isFileOnly: true, value: () => shownUnit(base, venue) },
    { key: "kind", head: "Kind", kind: "text", value: ({ kind }) => KINDS[kind], onPhone: "hidden" },
    {
      key: "serves",
      head: "Serves or batches",
      kind: "number",
      value: ({ serves }) => serves,
      show: ({ serves }) => formatNumber(serves, serves % 1 === 0 ? 0 : 1),
    },
    {
      key: "each",
      head: "In each",
      kind: "number",
      value: ({ amountPerServe }) => inShownUnit(amountPerServe, base, venue),
      show: ({ amountPerServe }) => amount(amountPerServe),
    },
    {
      key: "amount",
      head: "In all",
      kind: "number",
      onPhone: "main",
      value: (row) => inShownUnit(row.amount, base, venue),
      show: (row) => amount(row.amount),
    },
  ];
  return (
    <DataTable
      caption={`Expected use of ${item} by drink and batch. One fruit can serve several drinks, so that its parts may add up to more than the pieces expected.`}
      columns={columns}
      rows={drinks}
      rowKey={({ what, kind }) => `${kind} ${what}`}
      fileName={`used by, ${item}`}
      initialSort={{ key: "amount", isDescending: true }}
      isPlain={drinks.length < 8}
      empty={<p>Nothing that was sold or made between the two counts uses it by its spec.</p>}
    />
  );
}
