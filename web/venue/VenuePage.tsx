import "./venue.css";
import { Page } from "../parts/Page.tsx";
import { say } from "../texts/say.ts";
import { SettingsForm } from "./SettingsForm.tsx";

/** How the bar is set up, for whoever runs it. */
export function VenuePage() {
  return (
    <Page title={say("venue.title")} next={say("venue.next")}>
      <SettingsForm />
    </Page>
  );
}
