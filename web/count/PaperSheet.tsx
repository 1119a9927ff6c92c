import { Link } from "@tanstack/react-router";
import { Button } from "../parts/Button.tsx";
import { Page } from "../parts/Page.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { type PaperLine, paperLines } from "./paper.ts";
import type { Sheet } from "./sheet.ts";
import type { CountState } from "./use-count.ts";

/** The count on paper: every shelf in its order, with room to write. Expected figures are not on it. */
export function PaperSheet({ count, sheet }: { count: CountState; sheet: Sheet }) {
  const venue = useVenue();
  const lines = paperLines(sheet, venue.show);
  return (
    <Page
      title={say("steps.onPaper", { count: count.name })}
      next={say("steps.onPaperNext")}
      actions={
        <>
          <Link to="/count" search={{ count: count.name }} className="button">
            {say("count.back")}
          </Link>
          <Button kind="main" onClick={() => window.print()}>
            {say("steps.print")}
          </Button>
        </>
      }
    >
      <p className="paper-head">
        <span>{venue.name}</span>
        <span>{say("count.countedBy")}</span>
        <span>{say("steps.begunAt")}</span>
      </p>
      {sheet.areas.map(({ area }) => (
        <PaperArea key={area} area={area} lines={lines.filter((line) => line.area === area)} />
      ))}
    </Page>
  );
}

function PaperArea({ area, lines }: { area: string; lines: readonly PaperLine[] }) {
  return (
    <table className="paper-sheet">
      <caption>{area}</caption>
      <thead>
        <tr>
          <th scope="col">{say("steps.number")}</th>
          <th scope="col">{say("steps.item")}</th>
          <th scope="col">{say("count.pack")}</th>
          <th scope="col">{say("steps.fullOrAmount")}</th>
          <th scope="col">{say("steps.openTenths")}</th>
        </tr>
      </thead>
      <tbody>
        {lines.map(({ number, item, pack, unit }) => (
          <tr key={number}>
            <td>{number}</td>
            <th scope="row">{item.item}</th>
            <td>{pack ?? (unit === "each" ? say("count.pieces") : unit)}</td>
            <td className="paper-box" />
            <td className={pack === null ? "" : "paper-box"} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}
