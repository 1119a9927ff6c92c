import type { ReactNode } from "react";
import type { Totals } from "#engine/variance/totals.ts";
import { formatMoney, formatNumber } from "../format.ts";
import { UncertainMoney } from "../parts/Uncertain.tsx";
import { useVenue } from "../shell/venue.tsx";

/** The period in one line of money, ended by the double rule of a sum. */
export function TotalsLine({ totals }: { totals: Totals }) {
  const { currency } = useVenue();
  const { usedCost, expectedCost, unexplainedCost, unexplainedCostSd, sales, pourCostPct } = totals;
  const whole = (amount: number) => formatMoney(amount, currency, { whole: true });
  return (
    <dl className="totals-line">
      <Total name="Cost of drink used">{whole(usedCost)}</Total>
      <Total name="By the specs">{whole(expectedCost)}</Total>
      <Total name="Unexplained" isMain>
        <UncertainMoney amount={unexplainedCost} sd={unexplainedCostSd} />
      </Total>
      <Total name="Sales">{whole(sales)}</Total>
      <Total name="Pour cost">{pourCostPct === null ? "no sales" : `${formatNumber(pourCostPct, 1)}%`}</Total>
    </dl>
  );
}

function Total({ name, isMain = false, children }: { name: string; isMain?: boolean; children: ReactNode }) {
  return (
    <div className={isMain ? "total total-main" : "total"}>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}
