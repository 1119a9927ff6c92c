import "./people.css";
import { useState } from "react";
import { Button } from "../parts/Button.tsx";
import { Page } from "../parts/Page.tsx";
import { say } from "../texts/say.ts";
import { PasswordForm } from "./PasswordForm.tsx";
import { PinSignIn } from "./PinSignIn.tsx";
import type { SignInState } from "./signed-in.ts";
import { UnsentCount } from "./UnsentCount.tsx";

/** The way in: names and a PIN on a device of the bar, a name and a password everywhere else. */
export function SignIn({ state: { device, names, isFirst } }: { state: SignInState }) {
  const hasPins = device !== null && names.length > 0;
  const [isTyping, setTyping] = useState(!hasPins);
  if (isFirst) return <NobodyYet />;
  return (
    <Page title={say("people.signIn")} next={isTyping ? say("people.withPassword") : say("people.withPin")}>
      <UnsentCount />
      {isTyping ? <PasswordForm /> : <PinSignIn names={names} />}
      {hasPins ? (
        <Button kind="quiet" onClick={() => setTyping(!isTyping)}>
          {isTyping ? say("people.byPin") : say("people.byPassword")}
        </Button>
      ) : (
        <p className="soft sign-in-note">{device === null ? say("people.noDevice") : say("people.noPins")}</p>
      )}
      <p className="soft sign-in-note">{say("people.lost")}</p>
    </Page>
  );
}

function NobodyYet() {
  return (
    <Page title={say("people.nobodyYet")} next={say("people.nobodyYetNext")}>
      <p>{say("people.nobodyYetWhere")}</p>
    </Page>
  );
}
