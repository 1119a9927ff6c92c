import { queryOptions, useQuery } from "@tanstack/react-query";
import { useParams } from "@tanstack/react-router";
import { type Answer, answerOf, server } from "../api.ts";
import { formatDate, formatMoney, formatNumber, formatWhen, plural } from "../format.ts";
import { Busy } from "../parts/Busy.tsx";
import { DataTable } from "../parts/DataTable.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";

type Check = Answer<typeof server.orders.check.$get>[number];
type Line = Check["lines"][number];

const checkQuery = (order: string) =>
  queryOptions({
    queryKey: ["orders", "check", order],
    queryFn: () => answerOf(server.orders.check.$get({ query: { order } })),
  });

/** An order beside what came of it: short, late, priced otherwise, or something else in its place. */
export function OrderCheckPage() {
  const { order } = useParams({ from: "/order/check/$order" });
  const { data: checks, error, refetch } = useQuery(checkQuery(order));
  return (
    <Page
      title={`Order ${order}`}
      next="What was ordered beside what came. Ask the supplier before you pay for the rest."
    >
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {checks === undefined && error === null ? <Busy what="Laying invoices to the order" /> : null}
      {checks?.map((check) => (
        <Supplier key={check.supplier} check={check} />
      ))}
    </Page>
  );
}

function Supplier({ check }: { check: Check }) {
  const { supplier, placed, invoices, lines, unordered, deposits } = check;
  const venue = useVenue();
  return (
    <section>
      <h2>{supplier}</h2>
      <p>
        Placed {formatWhen(placed, venue)}.{" "}
        {invoices.length === 0 ? "No delivery is laid to it yet." : `Came with ${invoiceWords(invoices)}.`}
      </p>
      <DataTable
        caption="Line by line, in containers"
        columns={lineColumns(venue.currency)}
        rows={lines}
        rowKey={({ item, pack, expected }) => `${item} ${pack} ${expected}`}
        fileName="order check"
        isPlain
      />
      <Deposits deposits={deposits} />
      {unordered.length === 0 ? null : (
        <>
          <h3>Came without being ordered</h3>
          <ul>
            {unordered.map(({ item, pack, quantity, invoice, insteadOf }) => (
              <li key={`${invoice} ${item} ${pack}`}>
                {formatNumber(quantity)} × {pack} of {item}
                {insteadOf === null ? "" : `, perhaps in place of ${insteadOf}`} (invoice {invoice}).
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** Deposits beside the goods: what is due, what was charged, and what the empties give back. */
function Deposits({ deposits: { due, charged, empties, back } }: Pick<Check, "deposits">) {
  const { currency } = useVenue();
  if (due === 0 && empties === 0 && (charged ?? 0) === 0) return null;
  const money = (value: number) => formatMoney(value, currency);
  const isOff = charged !== null && Math.abs(charged - due) >= 0.005;
  return (
    <p>
      Deposit due on what came: {money(due)}
      {charged === null ? "" : `, charged: ${money(charged)}${isOff ? ` (${money(charged - due)} off)` : ""}`}
      .
      {empties === 0
        ? " No empties were handed back."
        : ` ${plural(empties, "empty container")} handed back, ${money(back)} to be credited; ${money((charged ?? due) - back)} deposit to pay.`}
    </p>
  );
}

function invoiceWords(invoices: readonly string[]): string {
  const named = invoices.filter((invoice) => invoice !== "");
  return named.length === 0
    ? "a delivery without an invoice number"
    : `${named.length === 1 ? "invoice" : "invoices"} ${named.join(", ")}`;
}

const STATES: Record<Line["state"], string> = {
  whole: "came",
  waiting: "on the way",
  short: "short",
  missing: "did not come",
};

function stateWords({ state, daysLate, expected }: Line): string {
  if (state === "waiting") return `${STATES.waiting}, due ${formatDate(expected)}`;
  return daysLate === 0 ? STATES[state] : `${STATES[state]}, ${plural(daysLate, "day")} late`;
}

function lineColumns(currency: string): Column<Line>[] {
  const price = (key: "priceOrdered" | "pricePaid", head: string): Column<Line> => ({
    key,
    head,
    kind: "number",
    value: (line) => line[key],
    show: (line) => (line[key] === null ? "" : formatMoney(line[key], currency)),
  });
  return [
    { key: "item", head: "Item", kind: "text", onPhone: "lead", value: ({ item }) => item },
    { key: "pack", head: "Pack", kind: "text", value: ({ pack }) => pack },
    { key: "ordered", head: "Ordered", kind: "number", value: ({ ordered }) => ordered },
    { key: "received", head: "Came", kind: "number", onPhone: "main", value: ({ received }) => received },
    { key: "state", head: "State", kind: "text", value: stateWords },
    price("priceOrdered", "Price ordered"),
    price("pricePaid", "Price paid"),
    {
      key: "paidMore",
      head: "Paid more",
      kind: "number",
      value: ({ paidMore }) => paidMore,
      show: ({ paidMore }) => (paidMore === 0 ? "" : formatMoney(paidMore, currency)),
    },
  ];
}
