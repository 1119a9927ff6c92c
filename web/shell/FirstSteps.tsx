import "./first-steps.css";
import { Page } from "../parts/Page.tsx";
import { NameTheBar } from "./NameTheBar.tsx";

/** The empty database: begin here with the bar's name, or one of three ways in, each with the very commands. */
export function FirstSteps() {
  return (
    <Page title="An empty book" next="Say which bar it is and go on step by step, or bring what you have.">
      <h2>Begin here</h2>
      <NameTheBar />
      <h2>Or bring what you have</h2>
      <p>Three ways in; load this page again after them.</p>
      <ol className="ways-in">
        <li>
          <h3>Look around first</h3>
          <p>
            Loads thirteen weeks of an invented bar into a database of its own, prints its week and opens it
            here. Nothing of yours is touched.
          </p>
          <pre>
            <code>npm run -s ullage -- demo</code>
          </pre>
        </li>
        <li>
          <h3>Bring a book</h3>
          <p>
            A book is a folder of plain sheets. Three are enough to begin: <code>venue.json</code>,{" "}
            <code>items.csv</code> and <code>packs.csv</code>. A wrong cell is named by file, row and column,
            and then nothing is loaded.
          </p>
          <pre>
            <code>npm run -s ullage -- load my-bar</code>
          </pre>
        </li>
        <li>
          <h3>Start from one sales file</h3>
          <p>
            Load a book with just those three sheets, then give it any file your till exports. Ullage finds
            the columns, and the Sales screen asks what each ring name means.
          </p>
          <pre>
            <code>{"npm run -s ullage -- load my-bar\nnpm run -s ullage -- sales week.csv"}</code>
          </pre>
        </li>
      </ol>
      <p className="first-steps-note soft">
        Give each command the <code>--db</code> that this server was started with, if it was given one. The
        demo serves itself: stop this server first, or add <code>--port 4681</code>.
      </p>
      <h2>The smallest venue.json</h2>
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
