import { Link } from "@tanstack/react-router";
import { Button } from "../parts/Button.tsx";
import { say } from "../texts/say.ts";
import type { Sheet } from "./sheet.ts";
import { drop, type WaitingEntry } from "./waiting.ts";

/** Entries the server would not take, with its reason and the way to mend each. */
export function Refused({ waiting, sheet }: { waiting: readonly WaitingEntry[]; sheet: Sheet }) {
  const refused = waiting.filter((entry) => entry.refused !== null);
  if (refused.length === 0) return null;
  const isOnSheet = (area: string, item: string) =>
    sheet.areas.some((one) => one.area === area && one.items.some((listed) => listed.item === item));
  return (
    <section>
      <h2>{say("steps.notTaken")}</h2>
      <ul className="count-refused">
        {refused.map(({ row, refused: why }) => (
          <li key={`${row.area} ${row.item} ${row.pack}`}>
            <strong>{row.item}</strong>, {row.area}: {why}
            <div>
              {isOnSheet(row.area, row.item) ? (
                <Link
                  to="/count"
                  search={{ count: row.count, area: row.area, item: row.item }}
                  className="button"
                >
                  {say("steps.enterAgain")}
                </Link>
              ) : null}
              <Button kind="quiet" onClick={() => drop(row)}>
                {say("steps.leaveOut")}
              </Button>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
