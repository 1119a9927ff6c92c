import { Link } from "@tanstack/react-router";
import { Check } from "lucide-react";
import { useEffect, useRef } from "react";
import { Button } from "../parts/Button.tsx";
import { Empty } from "../parts/Empty.tsx";
import { Page } from "../parts/Page.tsx";
import { Refused } from "./Refused.tsx";
import type { Sheet, SheetArea } from "./sheet.ts";
import { type CountState, missingIn } from "./use-count.ts";
import { WaitingLine } from "./WaitingLine.tsx";

/** The areas of a count, each with how many items are left in it. */
export function AreaList({ count, sheet }: { count: CountState; sheet: Sheet }) {
  const { name, rows, waiting, renewSheet } = count;
  const areas = sheet.areas.map((area) => ({ area, missing: missingIn(area, rows) }));
  const total = areas.reduce((sum, { area }) => sum + area.items.length, 0);
  const left = areas.reduce((sum, { missing }) => sum + missing.length, 0);
  const firstOpen = useRef<HTMLAnchorElement>(null);
  useEffect(() => firstOpen.current?.focus({ preventScroll: true }), []);
  if (total === 0) {
    return (
      <Page title={name}>
        <Empty title="Nothing to count yet">
          <p>The book has no items with a pack. Add items, packs and areas, then come back.</p>
        </Empty>
      </Page>
    );
  }
  const next = areas.find(({ missing }) => missing.length > 0)?.area.area;
  return (
    <Page
      title={name}
      next={left === 0 ? "All counted." : `${total - left} of ${total} counted. Choose an area.`}
    >
      <WaitingLine waiting={waiting} />
      <ul className="count-lines count-areas">
        {areas.map(({ area, missing }) => (
          <li key={area.area}>
            <AreaLink
              count={name}
              area={area}
              missing={missing}
              linkRef={area.area === next ? firstOpen : null}
            />
          </li>
        ))}
      </ul>
      <Refused waiting={waiting} sheet={sheet} />
      <div className="count-end">
        <Link to="/count" search={{ count: name, step: "review" }} className="button button-main">
          {left === 0 ? "Finish the count" : "What is missing, and finish"}
        </Link>
        <Button kind="quiet" onClick={renewSheet}>
          Fetch the sheet again
        </Button>
      </div>
    </Page>
  );
}

type LinkProps = {
  count: string;
  area: SheetArea;
  missing: string[];
  linkRef: React.RefObject<HTMLAnchorElement | null> | null;
};

function AreaLink({ count, area: { area, items }, missing, linkRef }: LinkProps) {
  const first = missing[0];
  return (
    <Link
      ref={linkRef}
      to="/count"
      search={first === undefined ? { count, area } : { count, area, item: first }}
    >
      <span>{area}</span>
      {first === undefined ? (
        <span className="area-done">
          <Check aria-hidden="true" size={18} /> all {items.length}
        </span>
      ) : (
        <span>
          <strong>{missing.length}</strong> <span className="soft">of {items.length} left</span>
        </span>
      )}
      <span
        className="area-fill"
        style={{ inlineSize: `${(100 * (items.length - missing.length)) / items.length}%` }}
      />
    </Link>
  );
}
