import { Link } from "@tanstack/react-router";
import { Page } from "../parts/Page.tsx";
import { say } from "../texts/say.ts";
import { mayWords, roleWord } from "./role-words.ts";
import { useSignedIn } from "./signed-in.ts";

/** In place of a screen that a role has no part in: whose it is, and the way back. */
export function NotYours() {
  const actor = useSignedIn();
  if (actor === null) return null;
  const { role } = actor;
  return (
    <Page
      title={say("people.notYours")}
      next={say("people.signedInAs", { role: roleWord(role), may: mayWords(role) })}
    >
      <p>{say("people.notYoursMore")}</p>
      <Link to="/" className="button">
        {say("shell.toWeek")}
      </Link>
    </Page>
  );
}
