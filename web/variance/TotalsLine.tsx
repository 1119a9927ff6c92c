import type { ReactNode } from "react";
import type { Totals } from "#engine/variance/totals.ts";
import { formatNumber } from "../format.ts";
import { formatMoney } from "../money.ts";
import { UncertainMoney } from "../parts/Uncertain.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";

/** The period in one line of money, ended by the double rule of a sum; the cost of a few items is no share of all sales. */
export function TotalsLine({ totals, isOfFew }: { totals: Totals; isOfFew: boolean }) {
  const { currency } = useVenue();
  const { usedCost, expectedCost, unexplainedCost, unexplainedCostSd, sales, pourCostPct } = totals;
  const whole = (amount: number) => formatMoney(amount, currency, { whole: true });
  return (
    <dl className="totals-line">
      <Total name={say("variance.usedCost")}>{whole(usedCost)}</Total>
      <Total name={say("variance.bySpecs")}>{whole(expectedCost)}</Total>
      <Total name={say("variance.unexplained")} isMain>
        <UncertainMoney amount={unexplainedCost} sd={unexplainedCostSd} />
      </Total>
      <Total name={say("variance.sales")}>{whole(sales)}</Total>
      <Total name={say("variance.pourCost")}>
        {pourCostPct === null || isOfFew
          ? say(sales > 0 ? "parts.notKnown" : "variance.noSales")
          : say("variance.percent", { number: formatNumber(pourCostPct, 1) })}
      </Total>
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
