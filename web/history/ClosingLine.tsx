import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { formatDate } from "../format.ts";
import { useMay } from "../people/signed-in.ts";
import { say } from "../texts/say.ts";
import { closingQuery } from "./history-queries.ts";

/** One line on the owner's report: whether the week is closed, or could be. */
export function ClosingLine() {
  const mayRead = useMay("runBar");
  const { data } = useQuery({ ...closingQuery, enabled: mayRead });
  if (data === undefined) return null;
  const { closed, next } = data;
  const isReady = next !== null && next.unsettled === 0;
  return (
    <p className="no-print">
      {closed === null
        ? say("history.noWeekClosed")
        : say("history.nowClosed", { date: formatDate(closed.through) })}{" "}
      <Link to="/history">
        {isReady ? say("history.closeTo", { date: formatDate(next.through) }) : say("history.closedWeeks")}
      </Link>
    </p>
  );
}
