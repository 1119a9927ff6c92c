import { Link } from "@tanstack/react-router";
import { Button } from "../parts/Button.tsx";
import { Page } from "../parts/Page.tsx";
import { useVenue } from "../shell/venue.tsx";
import { type PaperLine, paperLines } from "./paper.ts";
import type { Sheet } from "./sheet.ts";
import type { CountState } from "./use-count.ts";

/** The count on paper: every shelf in its order, with room to write. Expected figures are not on it. */
export function PaperSheet({ count, sheet }: { count: CountState; sheet: Sheet }) {
  const venue = useVenue();
  const lines = paperLines(sheet, venue.show);
  return (
    <Page
      title={`${count.name}, on paper`}
      next="Write full containers in the first box and each open one in tenths in the second; nothing written is not counted, a 0 is none."
      actions={
        <>
          <Link to="/count" search={{ count: count.name }} className="button">
            Back
          </Link>
          <Button kind="main" onClick={() => window.print()}>
            Print
          </Button>
        </>
      }
    >
      <p className="paper-head">
        <span>{venue.name}</span>
        <span>Counted by</span>
        <span>Begun at</span>
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
          <th scope="col">No.</th>
          <th scope="col">Item</th>
          <th scope="col">Pack</th>
          <th scope="col">Full, or amount</th>
          <th scope="col">Open, in tenths</th>
        </tr>
      </thead>
      <tbody>
        {lines.map(({ number, item, pack, unit }) => (
          <tr key={number}>
            <td>{number}</td>
            <th scope="row">{item.item}</th>
            <td>{pack ?? (unit === "each" ? "pieces" : unit)}</td>
            <td className="paper-box" />
            <td className={pack === null ? "" : "paper-box"} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}
