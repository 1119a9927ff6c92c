import "./first-steps.css";
import { Page } from "../parts/Page.tsx";

/** The empty database: three ways in, each with the very commands. */
export function FirstSteps() {
  return (
    <Page title="An empty book" next="Choose one of three ways in, then load this page again.">
      <ol className="ways-in">
        <li>
          <h2>Look around first</h2>
          <p>
            Loads thirteen weeks of an invented bar into a database of its own, prints its week and opens it
            here. Nothing of yours is touched.
          </p>
          <pre>
            <code>npm run -s ullage -- demo</code>
          </pre>
        </li>
        <li>
          <h2>Bring a book</h2>
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
          <h2>Start from one sales file</h2>
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
