import "./people.css";
import { Link } from "@tanstack/react-router";
import { Page } from "../parts/Page.tsx";
import { Devices } from "./Devices.tsx";
import { PeopleList } from "./PeopleList.tsx";
import { useMay } from "./signed-in.ts";
import { Tokens } from "./Tokens.tsx";

/** Who may sign in, on which devices a PIN counts, and tokens for scripts. */
export function PeoplePage() {
  const mayManage = useMay("managePeople");
  const mayEnrol = useMay("enrolDevices");
  if (!mayEnrol) {
    return (
      <Page title="People" next="Only the owner and managers see this.">
        <Link to="/">Go to this week</Link>
      </Page>
    );
  }
  return (
    <Page
      title="People"
      next={mayManage ? "Add somebody, then hand the link over." : "Enrol the bar’s phones and tablets."}
    >
      {mayManage ? <PeopleList /> : null}
      <Devices />
      {mayManage ? <Tokens /> : null}
    </Page>
  );
}
