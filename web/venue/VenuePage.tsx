import "./venue.css";
import { Link } from "@tanstack/react-router";
import { Page } from "../parts/Page.tsx";
import { useMay } from "../people/signed-in.ts";
import { say } from "../texts/say.ts";
import { SettingsForm } from "./SettingsForm.tsx";

/** How the bar is set up, for whoever runs it. */
export function VenuePage() {
  const runsBar = useMay("runBar");
  if (!runsBar) {
    return (
      <Page title={say("venue.title")} next={say("people.onlyOwner")}>
        <Link to="/">{say("shell.toWeek")}</Link>
      </Page>
    );
  }
  return (
    <Page title={say("venue.title")} next={say("venue.next")}>
      <SettingsForm />
    </Page>
  );
}
