import { Link } from "@tanstack/react-router";
import type { Totals } from "#engine/variance/totals.ts";
import type { VarianceRow } from "../answers.ts";
import { Empty } from "../parts/Empty.tsx";
import { Money } from "../parts/Money.tsx";
import { Uncertain, UncertainMoney } from "../parts/Uncertain.tsx";
import { Verdict } from "../parts/Verdict.tsx";
import { say, sayWith } from "../texts/say.ts";

type Props = { totals: Totals | null; top: readonly VarianceRow[]; isEarly: boolean };

/** The money unexplained and the three largest doubts behind it. */
export function Doubts({ totals, top, isEarly }: Props) {
  if (isEarly) {
    return (
      <section>
        <h2>{say("week.doubts")}</h2>
        <Empty title={say("week.early")}>
          <p>{sayWith("week.earlyMore", { link: <Link to="/sales">{say("week.earlyLink")}</Link> })}</p>
        </Empty>
      </section>
    );
  }
  return (
    <section>
      <h2>{say("week.doubts")}</h2>
      {totals === null ? (
        <Empty title={say("week.noVariance")}>
          <p>{say("week.noVarianceMore")}</p>
        </Empty>
      ) : (
        <>
          <Overall totals={totals} />
          <ul className="ruled doubts">
            {top.map((row) => (
              <Doubt key={row.item} row={row} />
            ))}
          </ul>
          {top.length === 0 ? <p>{say("week.noDoubt")}</p> : null}
        </>
      )}
    </section>
  );
}

/** The period in one sentence; what counting and pouring can blur is not called a loss. */
function Overall({ totals: { unexplainedCost: cost, unexplainedCostSd: sd } }: { totals: Totals }) {
  const money = <UncertainMoney amount={Math.abs(cost)} sd={sd} />;
  if (Math.abs(cost) < 2 * sd) return <p>{sayWith("week.overallBlurred", { money })}</p>;
  return <p>{sayWith("week.overall", { money, way: cost > 0 ? "more" : "less" })}</p>;
}

function Doubt({ row: { item, unexplained, sd, base, cost, verdict } }: { row: VarianceRow }) {
  return (
    <li>
      <Link to="/variance/$item" params={{ item }}>
        {item}
      </Link>
      <Verdict verdict={verdict} />
      <span className="doubt-size">
        <Uncertain amount={unexplained} sd={sd} base={base} signed /> · <Money amount={cost} whole />
      </span>
    </li>
  );
}
