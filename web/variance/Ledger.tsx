import type { VarianceRow } from "../answers.ts";
import { Money } from "../parts/Money.tsx";
import { Quantity } from "../parts/Quantity.tsx";
import { Uncertain } from "../parts/Uncertain.tsx";
import { say } from "../texts/say.ts";

/** One item's balance as it would stand in a ledger: down to used, against expected, to what is left unexplained. */
export function Ledger({ row }: { row: VarianceRow }) {
  return (
    <table className="ledger">
      <caption className="visually-hidden">{say("variance.balanceOf", { item: row.item })}</caption>
      <tbody>
        <Entry name={say("variance.openingCount")} amount={row.openingQty} row={row} isAlways />
        <Entry name={say("variance.received")} amount={row.received} row={row} isAlways />
        <Entry name={say("variance.madeInHouse")} amount={row.made} row={row} />
        <Entry name={say("variance.transferredIn")} amount={row.transferredIn} row={row} />
        <Entry name={say("variance.transferredOut")} amount={row.transferredOut} row={row} />
        <Entry name={say("variance.closingCount")} amount={row.closingQty} row={row} isAlways />
        <Entry name={say("variance.used")} amount={row.used} row={row} className="ledger-sum" isAlways />
        <Entry name={say("variance.expectedBySales")} amount={row.expected} row={row} isAlways />
        <Entry name={say("variance.lossesRecorded")} amount={row.losses} row={row} isAlways />
        <tr className="ledger-end">
          <th scope="row">{say("variance.unexplained")}</th>
          <td>
            <Uncertain amount={row.unexplained} sd={row.sd} base={row.base} signed />
          </td>
        </tr>
        <tr>
          <th scope="row" className="soft">
            {say("variance.atCost")}
          </th>
          <td className="soft">
            <Money amount={row.cost} />
          </td>
        </tr>
      </tbody>
    </table>
  );
}

type EntryProps = { name: string; amount: number; row: VarianceRow; className?: string; isAlways?: boolean };

/** A line that is left out when nothing happened, unless a ledger would miss it. */
function Entry({ name, amount, row, className, isAlways = false }: EntryProps) {
  if (amount === 0 && !isAlways) return null;
  return (
    <tr className={className}>
      <th scope="row">{name}</th>
      <td>
        <Quantity amount={amount} base={row.base} />
      </td>
    </tr>
  );
}
