import "./people.css";
import { useMutation, useQueryClient } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { type FormEvent, useState } from "react";
import { answerOf, server } from "../api.ts";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { say } from "../texts/say.ts";
import { ChooseSecret } from "./ChooseSecret.tsx";
import { forgetPerson } from "./forget.ts";
import { mayWords, roleWord } from "./role-words.ts";
import { type SignedIn, useSignedIn } from "./signed-in.ts";

/** Whoever is signed in: what they may do, the ways out, and another password or PIN. */
export function MePage() {
  const actor = useSignedIn();
  if (actor === null) return null;
  const mayEnrol = actor.powers.includes("enrolDevices");
  const runsBar = actor.powers.includes("runBar");
  return (
    <Page
      title={actor.name}
      next={say("people.signedInAs", { role: roleWord(actor.role), may: mayWords(actor.role) })}
      actions={
        mayEnrol || runsBar ? (
          <>
            {runsBar ? (
              <Link to="/venue" className="button">
                {say("venue.title")}
              </Link>
            ) : null}
            {mayEnrol ? (
              <Link to="/people" className="button">
                {say("people.peopleAndDevices")}
              </Link>
            ) : null}
          </>
        ) : undefined
      }
    >
      {actor.via === "demo" ? (
        <p>{say("people.demo")}</p>
      ) : (
        <>
          <Leave />
          <ChangeSecret actor={actor} />
        </>
      )}
    </Page>
  );
}

function Leave() {
  const queryClient = useQueryClient();
  const leave = useMutation({
    mutationFn: (isEverywhere: boolean) =>
      answerOf(isEverywhere ? server["sign-in"]["out-everywhere"].$post() : server["sign-in"].out.$post()),
    onSuccess: () => {
      forgetPerson();
      queryClient.clear();
      // A fresh page holds nothing of what the one before had fetched.
      window.location.assign("/");
    },
  });
  return (
    <section>
      <h2>{say("people.leave")}</h2>
      <div className="sign-out">
        <Button kind="main" disabled={leave.isPending} onClick={() => leave.mutate(false)}>
          {say("people.signOut")}
        </Button>
        <Button disabled={leave.isPending} onClick={() => leave.mutate(true)}>
          {say("people.signOutEverywhere")}
        </Button>
      </div>
      <p className="soft">{say("people.entriesStay")}</p>
      <Problems error={leave.error} />
    </section>
  );
}

function ChangeSecret({ actor: { via } }: { actor: SignedIn }) {
  const notify = useNotify();
  const kind = via === "pin" ? "pin" : "password";
  const [old, setOld] = useState("");
  const [secret, setSecret] = useState("");
  const change = useMutation({
    mutationFn: () => answerOf(server["sign-in"].change.$post({ json: { old, secret } })),
    onSuccess: () => {
      setOld("");
      setSecret("");
      notify({ text: say("people.changed", { kind }) });
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    change.mutate();
  };
  return (
    <section>
      <h2>{say("people.changeYours", { kind })}</h2>
      <form className="sign-in-form" onSubmit={submit}>
        <Field
          label={say("people.haveNow", { kind })}
          type="password"
          inputMode={kind === "pin" ? "numeric" : "text"}
          autoComplete="current-password"
          required
          value={old}
          onChange={(event) => setOld(event.target.value)}
        />
        <ChooseSecret kind={kind} value={secret} onChange={setSecret} />
        <Button type="submit" disabled={change.isPending}>
          {say("people.changeIt")}
        </Button>
        <Problems error={change.error} />
      </form>
    </section>
  );
}
