import "./people.css";
import { useState } from "react";
import { Button } from "../parts/Button.tsx";
import { Page } from "../parts/Page.tsx";
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
    <Page title="Sign in" next={isTyping ? "With your name and password." : "Tap your name, then your PIN."}>
      <UnsentCount />
      {isTyping ? <PasswordForm /> : <PinSignIn names={names} />}
      {hasPins ? (
        <Button kind="quiet" onClick={() => setTyping(!isTyping)}>
          {isTyping ? "Sign in with a PIN" : "Sign in with a password"}
        </Button>
      ) : (
        <p className="soft sign-in-note">
          {device === null
            ? "A PIN counts on the bar’s own devices; the owner or a manager enrols one after signing in on it."
            : "Nobody has a PIN yet; the owner adds people under People."}
        </p>
      )}
      <p className="soft sign-in-note">
        Lost your password or PIN? The owner makes you a new link, or whoever is at the server does.
      </p>
    </Page>
  );
}

function NobodyYet() {
  return (
    <Page title="Nobody owns this book yet" next="Open the link that the server printed when it started.">
      <p>
        It stands in the terminal where Ullage runs, works once and for a day. Start the server again for a
        new one. Whoever opens it becomes the owner and invites the others.
      </p>
    </Page>
  );
}
