import { Link } from "@tanstack/react-router";
import { Empty } from "../parts/Empty.tsx";
import { Page } from "../parts/Page.tsx";
import { say } from "../texts/say.ts";

/** A count of a book that has nothing on any shelf. */
export function NothingYet({ count }: { count: string }) {
  return (
    <Page title={count}>
      <Empty title={say("steps.nothing")}>
        <p>{say("steps.nothingNext")}</p>
        <p>
          <Link to="/count" search={{ count, step: "found" }} className="button button-main">
            {say("steps.firstItem")}
          </Link>
        </p>
      </Empty>
    </Page>
  );
}
