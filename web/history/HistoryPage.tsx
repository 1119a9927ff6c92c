import "./history.css";
import { useSearch } from "@tanstack/react-router";
import { Page } from "../parts/Page.tsx";
import { say } from "../texts/say.ts";
import { Acts } from "./Acts.tsx";
import { ClosedPast } from "./ClosedPast.tsx";
import { Narrow } from "./Narrow.tsx";

/** Who changed what, when, from where and why; the past closed and reopened; what was done, undone. */
export function HistoryPage() {
  const wanted = useSearch({ from: "/history" });
  return (
    <Page title={say("shell.history")} next={say("history.next")}>
      <ClosedPast />
      <section>
        <h2>{say("history.done")}</h2>
        <Narrow key={JSON.stringify(wanted)} wanted={wanted} />
        <Acts wanted={wanted} />
      </section>
    </Page>
  );
}
