import type { Venue } from "#engine/venue.ts";
import { formatShare } from "../figures.ts";
import { inShownUnit, shownUnit } from "../format.ts";
import { formatMoney } from "../money.ts";
import { LevelLine } from "../parts/LevelLine.tsx";
import type { Column } from "../parts/table-column.ts";
import { say } from "../texts/say.ts";
import type { DraftLine } from "./order-draft.ts";

type Change = (line: DraftLine, quantity: number) => void;

/** The columns of an order; the quantity is typed in place. */
export function orderColumns(venue: Venue, onChange: Change): Column<DraftLine>[] {
  const shown = (key: "onHand" | "onOrder" | "par", head: string): Column<DraftLine> => ({
    key,
    head,
    kind: "number",
    isFileOnly: true,
    value: (line) => inShownUnit(line[key], line.base, venue),
  });
  return [
    {
      key: "item",
      head: say("stock.item"),
      kind: "text",
      onPhone: "lead",
      value: ({ item }) => item,
      show: (line) => <ItemAndWhy line={line} />,
    },
    {
      key: "quantity",
      head: say("order.order"),
      kind: "number",
      onPhone: "main",
      value: ({ quantity }) => quantity,
      show: (line) => <QuantityInput line={line} onChange={onChange} />,
    },
    {
      key: "of",
      head: say("order.of"),
      kind: "text",
      isFileOnly: true,
      value: ({ of }) => say("order.ofWord", { of }),
    },
    { key: "pack", head: say("order.pack"), kind: "text", isFileOnly: true, value: ({ pack }) => pack },
    shown("onHand", say("stock.onHand")),
    shown("onOrder", say("order.onOrder")),
    shown("par", say("stock.par")),
    {
      key: "unit",
      head: say("stock.unit"),
      kind: "text",
      isFileOnly: true,
      value: ({ base }) => shownUnit(base, venue),
    },
    {
      key: "level",
      head: say("order.stockAndPar"),
      kind: "text",
      isDrawn: true,
      value: () => null,
      show: ({ onHand, onOrder, par, expectedUse, base }) => (
        <LevelLine {...{ onHand, onOrder, par, expectedUse, base }} />
      ),
    },
    {
      key: "runOut",
      head: say("order.runsOut"),
      kind: "number",
      onPhone: "hidden",
      value: ({ runOutChanceWithout }) => runOutChanceWithout,
      show: ({ runOutChanceWithout }) => formatShare(runOutChanceWithout),
    },
    {
      key: "runOutWith",
      head: say("order.runsOutWith"),
      kind: "number",
      onPhone: "hidden",
      value: ({ runOutChanceWith, quantity, suggested }) =>
        quantity === suggested ? runOutChanceWith : null,
      show: ({ runOutChanceWith, quantity, suggested }) =>
        quantity === suggested ? (
          formatShare(runOutChanceWith)
        ) : (
          <span className="soft">{say("order.changed")}</span>
        ),
    },
    {
      key: "cost",
      head: say("order.cost"),
      kind: "number",
      value: ({ cost }) => cost,
      show: ({ cost }) =>
        cost === null ? (
          <span className="soft">{say("parts.noPrice")}</span>
        ) : (
          formatMoney(cost, venue.currency)
        ),
    },
  ];
}

function ItemAndWhy({ line: { item, why } }: { line: DraftLine }) {
  return (
    <>
      {item}
      <span className="line-why">{why}</span>
    </>
  );
}

function QuantityInput({ line, onChange }: { line: DraftLine; onChange: Change }) {
  const { item, pack, of, quantity, suggested } = line;
  return (
    <span className="order-quantity">
      <input
        type="number"
        inputMode="numeric"
        min={0}
        step={1}
        aria-label={say("order.quantityOf", { of, item })}
        value={quantity}
        onChange={(event) => onChange(line, Math.max(0, Math.round(event.target.valueAsNumber || 0)))}
      />
      <span className="order-pack">
        {say("order.packBeside", { of, quantity, pack })}
        {quantity === suggested ? null : (
          <span className="order-suggested"> {say("order.suggested", { quantity: suggested })}</span>
        )}
      </span>
    </span>
  );
}
