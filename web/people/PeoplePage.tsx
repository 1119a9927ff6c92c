import "./people.css";
import { Link } from "@tanstack/react-router";
import { Page } from "../parts/Page.tsx";
import { say } from "../texts/say.ts";
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
      <Page title={say("people.people")} next={say("people.onlyOwner")}>
        <Link to="/">{say("shell.toWeek")}</Link>
      </Page>
    );
  }
  return (
    <Page
      title={say("people.people")}
      next={mayManage ? say("people.addSomebody") : say("people.enrolDevices")}
    >
      {mayManage ? <PeopleList /> : null}
      <Devices />
      {mayManage ? <Tokens /> : null}
    </Page>
  );
}
