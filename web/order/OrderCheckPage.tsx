import { queryOptions, useQuery } from "@tanstack/react-query";
import { useParams } from "@tanstack/react-router";
import { type Answer, answerOf, server } from "../api.ts";
import { formatDate, formatNumber, formatWhen } from "../format.ts";
import { formatMoney } from "../money.ts";
import { Busy } from "../parts/Busy.tsx";
import { DataTable } from "../parts/DataTable.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";

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
    <Page title={say("order.checkTitle", { order })} next={say("order.checkNext")}>
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {checks === undefined && error === null ? <Busy what={say("order.checking")} /> : null}
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
        {say("order.placedAt", { moment: formatWhen(placed, venue) })} {invoiceWords(invoices)}
      </p>
      <DataTable
        caption={say("order.lineByLine")}
        columns={lineColumns(venue.currency)}
        rows={lines}
        rowKey={({ item, pack, expected }) => `${item} ${pack} ${expected}`}
        fileName="order check"
        isPlain
      />
      <Deposits deposits={deposits} />
      {unordered.length === 0 ? null : (
        <>
          <h3>{say("order.unordered")}</h3>
          <ul>
            {unordered.map((line) => (
              <li key={`${line.invoice} ${line.item} ${line.pack}`}>{unorderedWords(line)}</li>
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
      {charged === null
        ? say("order.depositDue", { due: money(due) })
        : isOff
          ? say("order.depositOff", {
              due: money(due),
              charged: money(charged),
              off: money(charged - due),
            })
          : say("order.depositCharged", { due: money(due), charged: money(charged) })}{" "}
      {empties === 0
        ? say("order.noEmpties")
        : say("order.empties", {
            count: empties,
            back: money(back),
            pay: money((charged ?? due) - back),
          })}
    </p>
  );
}

function invoiceWords(invoices: readonly string[]): string {
  if (invoices.length === 0) return say("order.noDelivery");
  const named = invoices.filter((invoice) => invoice !== "");
  return named.length === 0
    ? say("order.cameWithout")
    : say("order.cameWith", { count: named.length, invoices: named.join(", ") });
}

function unorderedWords({ item, pack, quantity, invoice, insteadOf }: Check["unordered"][number]): string {
  const line = { item, pack, quantity: formatNumber(quantity), invoice };
  return insteadOf === null
    ? say("order.unorderedLine", line)
    : say("order.unorderedInstead", { ...line, insteadOf });
}

const STATES = { whole: "order.came", short: "order.short", missing: "order.didNotCome" } as const;

function stateWords({ state, daysLate, expected, ordered, received }: Line): string {
  const date = formatDate(expected);
  if (state === "waiting" && received > 0) {
    return say("order.restDue", { rest: formatNumber(ordered - received), date });
  }
  if (state === "waiting") return say("order.onTheWayDue", { date });
  const came = say(STATES[state]);
  return daysLate === 0 ? came : say("order.stateLate", { state: came, days: daysLate });
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
    { key: "item", head: say("stock.item"), kind: "text", onPhone: "lead", value: ({ item }) => item },
    { key: "pack", head: say("order.pack"), kind: "text", value: ({ pack }) => pack },
    { key: "ordered", head: say("order.ordered"), kind: "number", value: ({ ordered }) => ordered },
    {
      key: "received",
      head: say("order.received"),
      kind: "number",
      onPhone: "main",
      value: ({ received }) => received,
    },
    { key: "state", head: say("order.state"), kind: "text", value: stateWords },
    price("priceOrdered", say("order.priceOrdered")),
    price("pricePaid", say("order.pricePaid")),
    {
      key: "paidMore",
      head: say("order.paidMore"),
      kind: "number",
      value: ({ paidMore }) => paidMore,
      show: ({ paidMore }) => (paidMore === 0 ? "" : formatMoney(paidMore, currency)),
    },
  ];
}
