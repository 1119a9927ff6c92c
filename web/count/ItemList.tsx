import { Link } from "@tanstack/react-router";
import { useState } from "react";
import { Field } from "../parts/Field.tsx";
import { Page } from "../parts/Page.tsx";
import { allFoundWords, leftWords } from "./found-words.ts";
import type { SheetArea } from "./sheet.ts";
import { type CountState, missingIn, rowsOf } from "./use-count.ts";
import { WaitingLine } from "./WaitingLine.tsx";

/** One area as a list in shelf order: what was found, and what is left. */
export function ItemList({ count, area }: { count: CountState; area: SheetArea }) {
  const [typed, setTyped] = useState("");
  const { name, rows, waiting } = count;
  const missing = missingIn(area, rows);
  const first = missing[0];
  const shown = area.items.filter(({ item }) =>
    item.toLocaleLowerCase().includes(typed.trim().toLocaleLowerCase()),
  );
  return (
    <Page title={area.area} next={`${leftWords(missing.length)}, in shelf order.`}>
      <WaitingLine waiting={waiting} />
      <div className="count-crumbs">
        <Link to="/count" search={{ count: name }} className="button">
          All areas
        </Link>
        {first === undefined ? null : (
          <Link
            to="/count"
            search={{ count: name, area: area.area, item: first }}
            className="button button-main"
          >
            Next: {first}
          </Link>
        )}
      </div>
      <Field label="Find" type="search" value={typed} onChange={(event) => setTyped(event.target.value)} />
      <ul className="count-lines count-items">
        {shown.map(({ item }) => {
          const found = rowsOf(rows, { area: area.area, item });
          return (
            <li key={item}>
              <Link to="/count" search={{ count: name, area: area.area, item }}>
                <span>{item}</span>
                {found.length === 0 ? (
                  <span className="soft">not counted</span>
                ) : (
                  <span className="found">{allFoundWords(found)}</span>
                )}
              </Link>
            </li>
          );
        })}
      </ul>
    </Page>
  );
}
