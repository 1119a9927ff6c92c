import { Link, lazyRouteComponent, useNavigate } from "@tanstack/react-router";
import { type RefCallback, Suspense, useCallback, useRef } from "react";
import { Button } from "../parts/Button.tsx";
import { Page } from "../parts/Page.tsx";
import { useMay } from "../people/signed-in.ts";
import { withTexts } from "../texts/load.ts";
import { say, sayWith } from "../texts/say.ts";
import { CountIcon } from "./CountIcon.tsx";
import type { Sheet, SheetArea } from "./sheet.ts";
import { type CountState, missingIn } from "./use-count.ts";
import { WaitingLine } from "./WaitingLine.tsx";

const Find = lazyRouteComponent(() => import("./Find.tsx"), "Find");
const NothingYet = lazyRouteComponent(() => withTexts(() => import("./NothingYet.tsx")), "NothingYet");
const Refused = lazyRouteComponent(() => withTexts(() => import("./Refused.tsx")), "Refused");
const Differences = lazyRouteComponent(() => withTexts(() => import("./Differences.tsx")), "Differences");

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
  if (total === 0) return <NothingYet count={name} />;
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
      next={left === 0 ? say("count.allCounted") : say("count.progress", { done: total - left, total })}
    >
      <WaitingLine waiting={waiting} />
      {isSpot ? (
        <p className="count-spot">
          {say("count.spot")}{" "}
          <Button
            kind="quiet"
            onClick={() => {
              countAll();
              void navigate({ search: { count: name } });
            }}
          >
            {say("count.everything")}
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
        <Link
          to="/count"
          search={{ count: name, step: "review" }}
          className={left === 0 ? "button button-main" : "button"}
        >
          {left === 0 ? say("count.finish") : say("count.missing")}
        </Link>
        <Button kind="quiet" onClick={renewSheet}>
          {say("count.fetchAgain")}
        </Button>
      </div>
      <p className="count-more">
        <Link to="/count" search={{ count: name, step: "sheet" }}>
          {say("count.print")}
        </Link>
        <Link to="/count" search={{ count: name, step: "paper" }}>
          {say("count.fromPaper")}
        </Link>
        {mayAdd ? (
          <Link to="/count" search={{ count: name, step: "found" }}>
            {say("count.foundSomewhere")}
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
          <CountIcon name="check" size={18} /> {say("count.allOf", { total: items.length })}
        </span>
      ) : (
        <span className="area-left">
          {sayWith("count.leftOf", { left: <strong>{missing.length}</strong>, total: items.length })}
        </span>
      )}
      <span
        className="area-fill"
        style={{ inlineSize: `${(100 * (items.length - missing.length)) / items.length}%` }}
      />
    </Link>
  );
}
