import "./first-steps.css";
import { Page } from "../parts/Page.tsx";
import { say, sayWith } from "../texts/say.ts";
import { NameTheBar } from "./NameTheBar.tsx";

/** The empty database: begin here with the bar's name, or one of three ways in, each with the very commands. */
export function FirstSteps() {
  return (
    <Page title={say("people.firstSteps")} next={say("people.firstStepsNext")}>
      <h2>{say("people.firstStepsBegin")}</h2>
      <NameTheBar />
      <h2>{say("people.firstStepsBring")}</h2>
      <p>{say("people.firstStepsThreeWays")}</p>
      <ol className="ways-in">
        <li>
          <h3>{say("people.firstStepsLook")}</h3>
          <p>{say("people.firstStepsLookHow")}</p>
          <pre>
            <code>npm run -s ullage -- demo</code>
          </pre>
        </li>
        <li>
          <h3>{say("people.firstStepsBook")}</h3>
          <p>
            {sayWith("people.firstStepsBookHow", {
              venue: <code>venue.json</code>,
              items: <code>items.csv</code>,
              packs: <code>packs.csv</code>,
            })}
          </p>
          <pre>
            <code>npm run -s ullage -- load my-bar</code>
          </pre>
        </li>
        <li>
          <h3>{say("people.firstStepsSales")}</h3>
          <p>{say("people.firstStepsSalesHow")}</p>
          <pre>
            <code>{"npm run -s ullage -- load my-bar\nnpm run -s ullage -- sales week.csv"}</code>
          </pre>
        </li>
      </ol>
      <p className="first-steps-note soft">
        {sayWith("people.firstStepsDb", { db: <code>--db</code>, port: <code>--port 4681</code> })}
      </p>
      <h2>{say("people.firstStepsSmallest")}</h2>
      <pre>
        <code>
          {
            '{ "name": "The Back Room", "currency": "EUR", "timeZone": "Europe/Lisbon",\n  "dayEnds": "04:00", "oz": "us", "show": "ml" }'
          }
        </code>
      </pre>
    </Page>
  );
}
