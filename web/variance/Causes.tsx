import { Link } from "@tanstack/react-router";
import type { BaseUnit } from "#engine/measure/units.ts";
import type { Cause } from "../answers.ts";
import { formatShare } from "../figures.ts";
import { formatNumber, withUnit } from "../format.ts";
import { Quantity } from "../parts/Quantity.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say, sayWith } from "../texts/say.ts";
import { causeSentence, sureness } from "./cause-words.ts";
import { type Remedy, remedyOf } from "./remedy.ts";
import { type Between, SettleButtons } from "./SettleButtons.tsx";
import { CAUSES_HEADING } from "./settled.ts";

type Props = {
  causes: readonly Cause[];
  between: Between;
  baseOf: (item: string) => BaseUnit | undefined;
};

/** The few causes that would explain the numbers, each with what speaks for it and the check that would tell. */
export function Causes({ causes, between, baseOf }: Props) {
  if (causes.length === 0) return null;
  const groups = [...new Set(causes.map(({ group }) => group))];
  return (
    <section>
      <h2 id={CAUSES_HEADING} tabIndex={-1}>
        {say("variance.wouldExplain")}
      </h2>
      <ol className="causes">
        {groups.map((group) => (
          <li key={group}>
            {causes
              .filter((cause) => cause.group === group)
              .map((cause, place) => (
                <CauseEntry
                  key={JSON.stringify([cause.kind, cause.what])}
                  cause={cause}
                  between={between}
                  baseOf={baseOf}
                  isAlternative={place > 0}
                />
              ))}
          </li>
        ))}
      </ol>
    </section>
  );
}

/** No explanation of numbers is certain before its check was made. */
const MOST_SURE = 0.999;

type EntryProps = { cause: Cause; between: Between; baseOf: Props["baseOf"]; isAlternative: boolean };

function CauseEntry({ cause, between, baseOf, isAlternative }: EntryProps) {
  const venue = useVenue();
  const { probability, evidence, check } = cause;
  const remedy = remedyOf(cause.kind);
  return (
    <article className="cause">
      {isAlternative ? <p className="cause-or">{say("variance.orCause")}</p> : null}
      <p className="cause-sentence">
        {causeSentence(cause, venue)}{" "}
        <span className="cause-chance">
          {formatShare(Math.min(probability, MOST_SURE))}, {sureness(probability)}
        </span>
      </p>
      <p className="cause-check">
        <strong>{say("variance.check")}</strong> {check}
        {remedy === null ? null : (
          <> {sayWith("variance.ifSoDo", { link: <RemedyLink remedy={remedy} what={cause.what} /> })}</>
        )}
      </p>
      {evidence.length === 0 ? null : (
        <p className="cause-evidence">
          {sayWith("variance.explains", {
            list: evidence.map(({ item, amount, unit }, place) => (
              <span key={item}>
                {place === 0 ? "" : ", "}
                {sayWith("variance.amountOf", {
                  amount: <Evidence amount={amount} base={baseOf(item)} unit={unit} />,
                  item: (
                    <Link to="/variance/$item" params={{ item }}>
                      {item}
                    </Link>
                  ),
                })}
              </span>
            )),
          })}
        </p>
      )}
      <SettleButtons cause={cause} between={between} />
    </article>
  );
}

/** A recount opens with the items it is about. */
function RemedyLink({ remedy: { to, words }, what }: { remedy: Remedy; what: Cause["what"] }) {
  if (to !== "/count") return <Link to={to}>{say(words)}</Link>;
  return (
    <Link to={to} search={{ items: [what].flat().join(",") }}>
      {say(words)}
    </Link>
  );
}

function Evidence({
  amount,
  base,
  unit,
}: {
  amount: number;
  base: BaseUnit | undefined;
  unit: string | undefined;
}) {
  if (base !== undefined) return <Quantity amount={amount} base={base} signed />;
  if (unit === "serve") return say("variance.serves", { count: Math.round(amount) });
  const number = formatNumber(amount);
  return <span className="number">{unit === undefined ? number : withUnit(number, unit)}</span>;
}
