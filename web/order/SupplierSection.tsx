import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { type ReactNode, useState } from "react";
import type { SupplierOrder } from "../answers.ts";
import { formatDate, formatWhen } from "../format.ts";
import { formatMoney } from "../money.ts";
import { Button } from "../parts/Button.tsx";
import { DataTable } from "../parts/DataTable.tsx";
import { saveCsv } from "../parts/save-file.ts";
import { CopyButton } from "../parts/TableTools.tsx";
import { fileRows } from "../parts/table-text.ts";
import { catalogueQuery } from "../queries.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { orderColumns } from "./order-columns.tsx";
import {
  type DraftLine,
  depositsOf,
  draftLines,
  type Edits,
  emailText,
  lineKey,
  minimumOf,
  totalOf,
} from "./order-draft.ts";
import { PlaceOrder } from "./PlaceOrder.tsx";
import { ReachMinimum } from "./ReachMinimum.tsx";

/** One supplier's order: its times, its lines to change by hand, its total against the minimum, and the ways to send it. */
export function SupplierSection({ order, at }: { order: SupplierOrder; at: string }) {
  const venue = useVenue();
  const [edits, setEdits] = useState<Edits>(new Map());
  const [isPlacing, setPlacing] = useState(false);
  const lines = draftLines(order.lines, edits);
  const minimum = useMinimum(order.supplier, lines);
  const total = totalOf(lines);
  const change = (line: DraftLine, quantity: number) => setEdits(new Map(edits).set(lineKey(line), quantity));
  const columns = orderColumns(venue, change);
  const arrives = order.arrives === null ? null : formatDate(order.arrives.slice(0, 10));
  const hasUnpriced = lines.some(({ cost }) => cost === null);
  return (
    <section className="supplier">
      <h2>{order.supplier}</h2>
      <Times order={order} />
      <DataTable
        caption={say("order.orderTo", { supplier: order.supplier })}
        columns={columns}
        rows={lines}
        rowKey={lineKey}
        fileName={`order ${order.supplier}`}
        isPlain
        totals={{
          item: say(hasUnpriced ? "order.totalPriced" : "order.total"),
          cost: formatMoney(total, venue.currency),
        }}
      />
      <div className="supplier-end">
        <Deposits total={total} lines={lines} />
        <p className={minimum.isMet ? "minimum" : "minimum minimum-short"}>{minimum.words}</p>
        <div className="supplier-acts no-print">
          <CopyButton
            label={say("order.copyEmail")}
            text={() => emailText(lines, { venue: venue.name, supplier: order.supplier, arrives })}
          />
          <Button onClick={() => void saveCsv(`order ${order.supplier}`, fileRows(columns, lines))}>
            CSV
          </Button>
          <Button kind="main" onClick={() => setPlacing(true)}>
            {say("order.place")}
          </Button>
        </div>
      </div>
      {minimum.isMet ? null : <ReachMinimum order={order} />}
      <PlaceOrder
        {...{ order, lines, total, minimum, at }}
        isOpen={isPlacing}
        onClose={() => setPlacing(false)}
      />
    </section>
  );
}

function Deposits({ total, lines }: { total: number; lines: readonly DraftLine[] }) {
  const { currency } = useVenue();
  const deposits = depositsOf(lines);
  if (deposits === 0) return null;
  return (
    <p className="deposits">
      {say("order.deposits", {
        deposits: formatMoney(deposits, currency),
        total: formatMoney(total + deposits, currency),
      })}
    </p>
  );
}

function Times({ order: { orderBy, arrives, coversUntil } }: { order: SupplierOrder }) {
  const venue = useVenue();
  return (
    <dl className="times">
      <Time
        name={say("order.orderBy")}
        at={
          orderBy === null ? <Link to="/prices">{say("order.noDaysKnown")}</Link> : formatWhen(orderBy, venue)
        }
      />
      {arrives === null ? null : <Time name={say("order.arrives")} at={formatWhen(arrives, venue)} />}
      {coversUntil === null ? null : (
        <Time name={say("order.lastsUntil")} at={formatWhen(coversUntil, venue)} />
      )}
    </dl>
  );
}

function Time({ name, at }: { name: string; at: ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{at}</dd>
    </div>
  );
}

function useMinimum(name: string, lines: readonly DraftLine[]) {
  const { currency } = useVenue();
  const { data: catalogue } = useQuery(catalogueQuery);
  const perCase = new Map(catalogue?.packs.map(({ item, pack, perCase: n }) => [`${item}\n${pack}`, n]));
  return minimumOf({
    supplier: catalogue?.suppliers.find((supplier) => supplier.name === name),
    lines,
    casesOf: ({ item, pack, of }) => (of === "case" ? 1 : 1 / (perCase.get(`${item}\n${pack}`) ?? 1)),
    currency,
    formatMoney: (major) => formatMoney(major, currency),
  });
}
