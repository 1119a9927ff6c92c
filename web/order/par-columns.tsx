import type { Venue } from "#engine/venue.ts";
import type { OrderReport } from "../answers.ts";
import { formatShare } from "../figures.ts";
import { formatAmount, formatNumber, inShownUnit, shownUnit } from "../format.ts";
import { formatMoney } from "../money.ts";
import type { Column } from "../parts/table-column.ts";
import { say } from "../texts/say.ts";

export type ParRow = OrderReport["items"][number];

/** Of the button that opens an item's par, to come back to it. */
export function parButtonId(item: string): string {
  return `par-${encodeURIComponent(item)}`;
}

/** The columns of the pars; the item is what one taps to set its own. */
export function parColumns(venue: Venue, onChoose: (item: string) => void): Column<ParRow>[] {
  const money = (value: number | null | undefined) =>
    value == null ? <None /> : formatMoney(value, venue.currency, { whole: true });
  return [
    {
      key: "item",
      head: say("stock.item"),
      kind: "text",
      onPhone: "lead",
      value: ({ item }) => item,
      show: ({ item, parWhy }) => (
        <>
          <button type="button" id={parButtonId(item)} className="par-item" onClick={() => onChoose(item)}>
            {item}
          </button>
          <span className="line-why">{parWhy}</span>
        </>
      ),
    },
    {
      key: "computed",
      head: say("order.computed"),
      kind: "number",
      onPhone: "main",
      value: ({ parComputed, base }) => inShownUnit(parComputed, base, venue),
      show: (row) => <InPacks row={row} amount={row.parComputed} venue={venue} />,
    },
    {
      key: "set",
      head: say("order.byHand"),
      kind: "number",
      value: ({ parSet, base }) => (parSet === null ? null : inShownUnit(parSet, base, venue)),
      show: (row) =>
        row.parSet === null ? <None /> : <InPacks row={row} amount={row.parSet} venue={venue} />,
    },
    {
      key: "unit",
      head: say("stock.unit"),
      kind: "text",
      isFileOnly: true,
      value: ({ base }) => shownUnit(base, venue),
    },
    {
      key: "risk",
      head: say("order.riskComputed"),
      kind: "number",
      onPhone: "hidden",
      value: ({ atPar }) => atPar.computed.runOutChance,
      show: ({ atPar }) => formatShare(atPar.computed.runOutChance),
    },
    {
      key: "riskSet",
      head: say("order.setByHand"),
      kind: "number",
      onPhone: "hidden",
      value: ({ atPar }) => atPar.set?.runOutChance ?? null,
      show: ({ atPar }) => (atPar.set === null ? <None /> : formatShare(atPar.set.runOutChance)),
    },
    {
      key: "money",
      head: say("order.moneyComputed"),
      kind: "number",
      onPhone: "hidden",
      value: ({ atPar }) => atPar.computed.money,
      show: ({ atPar }) => money(atPar.computed.money),
    },
    {
      key: "moneySet",
      head: say("order.setByHand"),
      kind: "number",
      onPhone: "hidden",
      value: ({ atPar }) => atPar.set?.money ?? null,
      show: ({ atPar }) => money(atPar.set?.money),
    },
    {
      key: "reason",
      head: say("order.reason"),
      kind: "text",
      isFileOnly: true,
      value: ({ parReason }) => parReason,
    },
  ];
}

/** So many bottles, as one counts them; the exact amount behind it. */
function InPacks({ row: { base, unit }, amount, venue }: { row: ParRow; amount: number; venue: Venue }) {
  const exact = formatAmount(amount, base, venue);
  return (
    <span className="number" title={exact}>
      {say("order.parInPacks", {
        amount: formatNumber(amount / unit.size, 1),
        of: unit.of,
        pack: unit.pack,
      })}
      <span className="visually-hidden">, {exact}</span>
    </span>
  );
}

function None() {
  return <span className="soft">{say("stock.none")}</span>;
}
