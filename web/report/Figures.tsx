import type { ReactNode } from "react";
import { formatNumber } from "../format.ts";
import { formatMoney } from "../money.ts";
import { UncertainMoney } from "../parts/Uncertain.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import type { OwnerReport } from "./query.ts";

/** Cost of the drink used against what the specs of what was sold come to. */
export function Figures({ report: { totals, specCostPct } }: { report: OwnerReport }) {
  const { currency } = useVenue();
  const { usedCost, expectedCost, unexplainedCost, unexplainedCostSd, pourCostPct } = totals;
  const whole = (amount: number) => formatMoney(amount, currency, { whole: true });
  return (
    <dl className="totals-line">
      <Figure name={say("variance.usedCost")} share={pourCostPct}>
        {whole(usedCost)}
      </Figure>
      <Figure name={say("report.bySpecs")} share={specCostPct}>
        {whole(expectedCost)}
      </Figure>
      <Figure name={say("variance.unexplained")} share={null} isMain>
        <UncertainMoney amount={unexplainedCost} sd={unexplainedCostSd} />
      </Figure>
    </dl>
  );
}

type FigureProps = { name: string; share: number | null; isMain?: boolean; children: ReactNode };

function Figure({ name, share, isMain = false, children }: FigureProps) {
  return (
    <div className={isMain ? "total total-main" : "total"}>
      <dt>{name}</dt>
      <dd>
        {children}
        {share === null ? null : (
          <span className="figure-share"> {say("report.ofSales", { share: formatNumber(share, 1) })}</span>
        )}
      </dd>
    </div>
  );
}
