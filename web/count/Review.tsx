import "./review.css";
import { Link, useNavigate } from "@tanstack/react-router";
import { ChangedBy } from "../history/ChangedBy.tsx";
import { Button } from "../parts/Button.tsx";
import { Page } from "../parts/Page.tsx";
import { useMay } from "../people/signed-in.ts";
import { say } from "../texts/say.ts";
import { Differences } from "./Differences.tsx";
import { Refused } from "./Refused.tsx";
import type { Sheet } from "./sheet.ts";
import { type CountState, missingIn } from "./use-count.ts";
import { WaitingLine } from "./WaitingLine.tsx";

/** Before a count is left: what nobody counted, as not counted is not none. */
export function Review({ count, sheet }: { count: CountState; sheet: Sheet }) {
  const navigate = useNavigate({ from: "/count" });
  const { name, rows, waiting, differences } = count;
  const areas = sheet.areas
    .map((area) => ({ area: area.area, missing: missingIn(area, rows) }))
    .filter(({ missing }) => missing.length > 0);
  const left = areas.reduce((sum, { missing }) => sum + missing.length, 0);
  const isUnsent = waiting.length > 0;
  const seesVariance = useMay("seeCosts");
  return (
    <Page
      title={left === 0 ? say("steps.allCounted") : say("steps.notCounted", { left })}
      next={
        left > 0
          ? say("steps.notNone")
          : say(seesVariance ? "steps.nothingMissingShow" : "steps.nothingMissing")
      }
    >
      <WaitingLine waiting={waiting} />
      <Differences differences={differences} rows={rows} />
      <Refused waiting={waiting} sheet={sheet} />
      {areas.map(({ area, missing }) => (
        <section key={area}>
          <h2>
            {area} <span className="soft">{missing.length}</span>
          </h2>
          <ul className="count-lines count-items">
            {missing.map((item) => (
              <li key={item}>
                <Link to="/count" search={{ count: name, area, item }}>
                  {item}
                </Link>
              </li>
            ))}
          </ul>
        </section>
      ))}
      <ChangedBy subject={name} />
      {isUnsent ? <p>{say("steps.unsent")}</p> : null}
      <div className="count-end review-end">
        <Link to="/count" search={{ count: name }} className={left === 0 ? "button" : "button button-main"}>
          {say("steps.toAreas")}
        </Link>
        <Button
          kind={left === 0 ? "main" : "plain"}
          disabled={isUnsent || rows.length === 0}
          onClick={() =>
            void navigate(seesVariance ? { to: "/variance", search: { count: name } } : { to: "/" })
          }
        >
          {finishWords(left, seesVariance)}
        </Button>
      </div>
    </Page>
  );
}

function finishWords(left: number, seesVariance: boolean): string {
  if (left === 0) return say(seesVariance ? "steps.finishShow" : "steps.finish");
  return say(seesVariance ? "steps.finishWithoutShow" : "steps.finishWithout", { left });
}
