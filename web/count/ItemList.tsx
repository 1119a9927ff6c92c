import { Link, lazyRouteComponent } from "@tanstack/react-router";
import { Suspense } from "react";
import { Page } from "../parts/Page.tsx";
import { useMay } from "../people/signed-in.ts";
import { say } from "../texts/say.ts";
import { allFoundWords } from "./found-words.ts";
import type { Sheet, SheetArea } from "./sheet.ts";
import { type CountState, missingIn, rowsOf } from "./use-count.ts";
import { WaitingLine } from "./WaitingLine.tsx";

const Find = lazyRouteComponent(() => import("./Find.tsx"), "Find");

/** One area as a list in shelf order: what was found, and what is left. */
export function ItemList({ count, sheet, area }: { count: CountState; sheet: Sheet; area: SheetArea }) {
  const { name, rows, waiting } = count;
  const mayAdd = useMay("runBar");
  const missing = missingIn(area, rows);
  const first = missing[0];
  const list = (
    <ul className="count-lines count-items">
      {area.items.map(({ item }) => {
        const found = rowsOf(rows, { area: area.area, item });
        return (
          <li key={item}>
            <Link to="/count" search={{ count: name, area: area.area, item }}>
              <span>{item}</span>
              {found.length === 0 ? (
                <span className="soft">{say("count.notCounted")}</span>
              ) : (
                <span className="found">{allFoundWords(found)}</span>
              )}
            </Link>
          </li>
        );
      })}
    </ul>
  );
  return (
    <Page
      title={area.area}
      next={
        first === undefined ? say("count.allInOrder") : say("count.leftInOrder", { left: missing.length })
      }
    >
      <WaitingLine waiting={waiting} />
      <div className="count-crumbs">
        <Link to="/count" search={{ count: name }} className="button">
          {say("count.allAreas")}
        </Link>
        {first === undefined ? null : (
          <Link
            to="/count"
            search={{ count: name, area: area.area, item: first }}
            className="button button-main"
          >
            {say("count.nextItem", { item: first })}
          </Link>
        )}
      </div>
      <Suspense fallback={list}>
        <Find count={count} sheet={sheet} here={area.area}>
          {list}
        </Find>
      </Suspense>
      <p className="count-more">
        {mayAdd ? (
          <Link to="/count" search={{ count: name, area: area.area, step: "found" }}>
            {say("count.foundHere")}
          </Link>
        ) : null}
        <Link to="/count" search={{ count: name, area: area.area, step: "order" }}>
          {say("count.changeOrder")}
        </Link>
      </p>
    </Page>
  );
}
