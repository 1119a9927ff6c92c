import { formatShare } from "../figures.ts";
import { listWords } from "../format.ts";
import { formatMoney } from "../money.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { causeSentence, sureness } from "../variance/cause-words.ts";
import { rivalWords } from "./check-words.ts";
import type { OwnerReport } from "./query.ts";

const MOST_SURE = 0.999;

/** The three things to check, those that explain most money first. */
export function Checks({ report: { checks } }: { report: OwnerReport }) {
  const venue = useVenue();
  return (
    <section>
      <h2>{say("report.checks", { count: checks.length })}</h2>
      {checks.length === 0 ? <p>{say("report.noChecks")}</p> : null}
      <ol className="report-checks">
        {checks.map(({ items, rivals, cost, probability, check, count, sign, ...cause }) => (
          <li key={JSON.stringify([cause.kind, cause.what])}>
            <p className="cause-sentence">
              {items.length > 0
                ? say("report.areaLeftOut", { count: count ?? "", items: listWords(items) })
                : causeSentence({ ...cause, count: count ?? undefined, sign: sign ?? undefined }, venue)}{" "}
              <span className="cause-chance">
                {say("report.chance", {
                  share: formatShare(Math.min(probability, MOST_SURE)),
                  sureness: sureness(probability),
                  money: formatMoney(cost, venue.currency, { whole: true }),
                })}
              </span>
            </p>
            <p className="cause-check">{check}</p>
            {rivals.length === 0 ? null : <p className="cause-or">{rivalWords(rivals)}</p>}
          </li>
        ))}
      </ol>
    </section>
  );
}
