import { Link } from "@tanstack/react-router";
import { Page } from "../parts/Page.tsx";
import { say } from "../texts/say.ts";

export function NotFound() {
  return (
    <Page title={say("shell.noPage")} next={say("shell.noPageNext")}>
      <p>
        <Link to="/">{say("shell.toWeek")}</Link>
      </p>
    </Page>
  );
}
