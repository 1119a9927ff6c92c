import { Link, lazyRouteComponent, useNavigate } from "@tanstack/react-router";
import { Check } from "lucide-react";
import { type RefCallback, Suspense, useCallback, useRef } from "react";
import { Button } from "../parts/Button.tsx";
import { Empty } from "../parts/Empty.tsx";
import { Page } from "../parts/Page.tsx";
import { useMay } from "../people/signed-in.ts";
import type { Sheet, SheetArea } from "./sheet.ts";
import { type CountState, missingIn } from "./use-count.ts";
import { WaitingLine } from "./WaitingLine.tsx";

const Find = lazyRouteComponent(() => import("./Find.tsx"), "Find");
const Refused = lazyRouteComponent(() => import("./Refused.tsx"), "Refused");
const Differences = lazyRouteComponent(() => import("./Differences.tsx"), "Differences");

/** The areas of a count, each with how many items are left in it. */
export function AreaList({ count, sheet }: { count: CountState; sheet: Sheet }) {
  const { name, rows, waiting, differences, isSpot, countAll, renewSheet } = count;
  const navigate = useNavigate({ from: "/count" });
  const mayAdd = useMay("runBar");
  const areas = sheet.areas.map((area) => ({ area, missing: missingIn(area, rows) }));
  const total = areas.reduce((sum, { area }) => sum + area.items.length, 0);
  const left = areas.reduce((sum, { missing }) => sum + missing.length, 0);
  const hasBegun = useRef(false);
  // The list is put up twice, the second time inside the search once that has loaded: the focus follows it.
  const firstOpen = useCallback((link: HTMLAnchorElement | null) => {
    const isLost = document.activeElement === document.body;
    if (link === null || (hasBegun.current && !isLost)) return;
    hasBegun.current = true;
    link.focus({ preventScroll: true });
  }, []);
  if (total === 0) {
    return (
      <Page title={name}>
        <Empty title="Nothing to count yet">
          <p>Walk to the first shelf and name what stands there; each thing named can be counted at once.</p>
          <p>
            <Link to="/count" search={{ count: name, step: "found" }} className="button button-main">
              Put the first item on a shelf
            </Link>
          </p>
        </Empty>
      </Page>
    );
  }
  const next = areas.find(({ missing }) => missing.length > 0)?.area.area;
  const list = (
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
  );
  return (
    <Page
      title={name}
      next={left === 0 ? "All counted." : `${total - left} of ${total} counted. Choose an area.`}
    >
      <WaitingLine waiting={waiting} />
      {isSpot ? (
        <p className="count-spot">
          A short count of chosen items.{" "}
          <Button
            kind="quiet"
            onClick={() => {
              countAll();
              void navigate({ search: { count: name } });
            }}
          >
            Count everything
          </Button>
        </p>
      ) : null}
      {differences.length === 0 ? null : (
        <Suspense>
          <Differences differences={differences} rows={rows} />
        </Suspense>
      )}
      <Suspense fallback={list}>
        <Find count={count} sheet={sheet}>
          {list}
        </Find>
      </Suspense>
      {waiting.some(({ refused }) => refused !== null) ? (
        <Suspense>
          <Refused waiting={waiting} sheet={sheet} />
        </Suspense>
      ) : null}
      <div className="count-end">
        <Link to="/count" search={{ count: name, step: "review" }} className="button button-main">
          {left === 0 ? "Finish the count" : "What is missing, and finish"}
        </Link>
        <Button kind="quiet" onClick={renewSheet}>
          Fetch the sheet again
        </Button>
      </div>
      <p className="count-more">
        <Link to="/count" search={{ count: name, step: "sheet" }}>
          Print a sheet to count on paper
        </Link>
        <Link to="/count" search={{ count: name, step: "paper" }}>
          Enter a sheet from paper
        </Link>
        {mayAdd ? (
          <Link to="/count" search={{ count: name, step: "found" }}>
            Something stands somewhere that is not listed
          </Link>
        ) : null}
      </p>
    </Page>
  );
}

type LinkProps = {
  count: string;
  area: SheetArea;
  missing: string[];
  linkRef: RefCallback<HTMLAnchorElement> | null;
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
