import { Link } from "@tanstack/react-router";
import { Button } from "../parts/Button.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { actAndFacts, isUndoing, placeWords } from "./act-words.ts";
import { dayWords, factLines } from "./fact-lines.ts";
import type { Act } from "./history-queries.ts";
import type { Undo } from "./use-undo.ts";

/** One act: when, what, who from where, why, and the facts before and after behind it. */
export function ActRow({ act, undo }: { act: Act; undo: Undo | null }) {
  const { seq, atLocal, who, reason, undoneBy, canUndo, subjects } = act;
  const { title, what } = actAndFacts(act, useVenue());
  const way = isUndoing(act) ? say("history.doAgain") : say("parts.undo");
  return (
    <li className={undoneBy === null ? "act" : "act act-undone"} id={`act-${seq}`}>
      <span className="act-time">{atLocal.slice(11)}</span>
      <div className="act-body">
        <p className="act-what">
          <strong>{title}</strong> {what}
        </p>
        <p className="soft">
          {who}, {placeWords(act)}
          {reason === "" ? null : `. ${say("history.why", { reason })}`}
        </p>
        <p className="soft">
          {undoneBy === null
            ? say("history.number", { number: seq })
            : say("history.numberUndone", { number: seq, undoneBy })}
          {subjects.slice(0, SUBJECTS_SHOWN).map(({ kind, name }) => (
            <span key={`${kind} ${name}`}>
              {", "}
              <Link
                to="/history"
                search={{ subject: name }}
                aria-label={say("history.allAbout", { name: calledAs(kind, name) })}
              >
                {calledAs(kind, name)}
              </Link>
            </span>
          ))}
        </p>
        <Facts act={act} />
      </div>
      {canUndo && undo !== null ? (
        <Button
          kind="quiet"
          aria-label={`${way}: ${what}`}
          disabled={undo.isPending}
          onClick={() => undo.mutate(seq)}
        >
          {way}
        </Button>
      ) : null}
    </li>
  );
}

const SUBJECTS_SHOWN = 4;

/** A week is known by its last day, which people read as a day. */
function calledAs(kind: string, name: string): string {
  return kind === "week" ? dayWords(name) : name;
}

function Facts({ act: { before, after } }: { act: Act }) {
  const venue = useVenue();
  const [was, is] = [factLines(before, venue), factLines(after, venue)];
  if (was.length === 0 && is.length === 0) return null;
  return (
    <details className="act-facts">
      <summary>{say("history.beforeAndAfter")}</summary>
      <dl>
        <dt>{say("history.before")}</dt>
        <dd>
          <Lines lines={was} />
        </dd>
        <dt>{say("history.after")}</dt>
        <dd>
          <Lines lines={is} />
        </dd>
      </dl>
    </details>
  );
}

function Lines({ lines }: { lines: readonly string[] }) {
  if (lines.length === 0) return <span className="soft">{say("history.nothing")}</span>;
  return (
    <ul>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}
