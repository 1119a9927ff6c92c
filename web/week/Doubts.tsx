import { Link } from "@tanstack/react-router";
import type { Totals } from "#engine/variance/totals.ts";
import type { VarianceRow } from "../answers.ts";
import { Empty } from "../parts/Empty.tsx";
import { Money } from "../parts/Money.tsx";
import { Uncertain, UncertainMoney } from "../parts/Uncertain.tsx";
import { Verdict } from "../parts/Verdict.tsx";

/** The money unexplained and the three largest doubts behind it. */
export function Doubts({ totals, top }: { totals: Totals | null; top: readonly VarianceRow[] }) {
  return (
    <section>
      <h2>Largest doubts</h2>
      {totals === null ? (
        <Empty title="No variance yet">
          <p>It takes two counts with sales between them. The second one tells what the week really used.</p>
        </Empty>
      ) : (
        <>
          <Overall totals={totals} />
          <ul className="ruled doubts">
            {top.map((row) => (
              <Doubt key={row.item} row={row} />
            ))}
          </ul>
          {top.length === 0 ? <p>Every item lies within what counting and pouring can blur.</p> : null}
        </>
      )}
    </section>
  );
}

/** The period in one sentence; what counting and pouring can blur is not called a loss. */
function Overall({ totals: { unexplainedCost: cost, unexplainedCostSd: sd } }: { totals: Totals }) {
  const size = <UncertainMoney amount={Math.abs(cost)} sd={sd} />;
  if (Math.abs(cost) < 2 * sd) {
    return (
      <p>
        Over all items {size}: no more than counting and pouring can blur. Single items may still stand out.
      </p>
    );
  }
  return (
    <p>
      Over all items, {size} {cost > 0 ? "more" : "less"} drink was used than is explained by what was sold,
      made and recorded as lost.
    </p>
  );
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
