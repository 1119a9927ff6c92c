import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { formatDate } from "../format.ts";
import { useMay } from "../people/signed-in.ts";
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
      {closed === null ? "No week is closed yet." : `Closed up to ${formatDate(closed.through)}.`}{" "}
      <Link to="/history">{isReady ? `Close the week to ${formatDate(next.through)}` : "Closed weeks"}</Link>
    </p>
  );
}
