import type { BaseUnit } from "#engine/measure/units.ts";
import type { DrinkUse } from "#engine/variance/drinks-that-used.ts";
import { formatAmount, formatNumber, inShownUnit, shownUnit } from "../format.ts";
import { DataTable } from "../parts/DataTable.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";

type Props = { drinks: readonly DrinkUse[]; base: BaseUnit; item: string };

const KINDS = { sale: "variance.kindSale", batch: "variance.kindBatch" } as const;

/** The drinks sold and batches made that make up the expected use, largest first. */
export function UsedBy({ drinks, base, item }: Props) {
  const venue = useVenue();
  const amount = (value: number) => formatAmount(value, base, venue);
  const columns: Column<DrinkUse>[] = [
    {
      key: "what",
      head: say("variance.drinkOrBatch"),
      kind: "text",
      onPhone: "lead",
      value: ({ what }) => what,
    },
    {
      key: "unit",
      head: say("variance.unit"),
      kind: "text",
      isFileOnly: true,
      value: () => shownUnit(base, venue),
    },
    {
      key: "kind",
      head: say("variance.kind"),
      kind: "text",
      value: ({ kind }) => say(KINDS[kind]),
      onPhone: "hidden",
    },
    {
      key: "serves",
      head: say("variance.servesOrBatches"),
      kind: "number",
      value: ({ serves }) => serves,
      show: ({ serves }) => formatNumber(serves, serves % 1 === 0 ? 0 : 1),
    },
    {
      key: "each",
      head: say("variance.inEach"),
      kind: "number",
      value: ({ amountPerServe }) => inShownUnit(amountPerServe, base, venue),
      show: ({ amountPerServe }) => amount(amountPerServe),
    },
    {
      key: "amount",
      head: say("variance.inAll"),
      kind: "number",
      onPhone: "main",
      value: (row) => inShownUnit(row.amount, base, venue),
      show: (row) => amount(row.amount),
    },
  ];
  return (
    <DataTable
      caption={say("variance.usedBy", { item })}
      columns={columns}
      rows={drinks}
      rowKey={({ what, kind }) => `${kind} ${what}`}
      fileName={`used by, ${item}`}
      initialSort={{ key: "amount", isDescending: true }}
      isPlain={drinks.length < 8}
      empty={<p>{say("variance.usedByNone")}</p>}
    />
  );
}
