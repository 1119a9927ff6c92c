import { formatShare } from "../figures.ts";
import { formatMoney } from "../money.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { sureness } from "../variance/cause-words.ts";
import { checkSentence, rivalWords } from "./check-words.ts";
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
        {checks.map((one) => (
          <li key={JSON.stringify([one.kind, one.what])}>
            <p className="cause-sentence">
              {checkSentence(one, venue)}{" "}
              <span className="cause-chance">
                {say("report.chance", {
                  share: formatShare(Math.min(one.probability, MOST_SURE)),
                  sureness: sureness(one.probability),
                  money: formatMoney(one.cost, venue.currency, { whole: true }),
                })}
              </span>
            </p>
            <p className="cause-check">{one.check}</p>
            {one.rivals.length === 0 ? null : <p className="cause-or">{rivalWords(one.rivals)}</p>}
          </li>
        ))}
      </ol>
    </section>
  );
}
