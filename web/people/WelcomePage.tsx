import "./people.css";
import { useQuery } from "@tanstack/react-query";
import { Link, useNavigate } from "@tanstack/react-router";
import { type FormEvent, useState } from "react";
import { type Answer, answerOf, server } from "../api.ts";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { say } from "../texts/say.ts";
import { ChooseSecret } from "./ChooseSecret.tsx";
import { mayWords, roleWord } from "./role-words.ts";
import { LINK_KEY, useEnter } from "./use-enter.ts";

type LinkFor = Answer<(typeof server)["sign-in"]["link"]["look"]["$post"]>;

/** What a one-time link opens: the first owner names themselves, everybody chooses a password or PIN. */
export function WelcomePage() {
  // The part behind # stays in the browser; it is taken out of the address so that nobody reads or shares it.
  const [link] = useState(() => window.location.hash.slice(1));
  const { data, error } = useQuery({
    queryKey: [LINK_KEY, link],
    queryFn: () => answerOf(server["sign-in"].link.look.$post({ json: { link } })),
    enabled: link !== "",
    retry: false,
    staleTime: Number.POSITIVE_INFINITY,
  });
  if (link === "" || error !== null) {
    return (
      <Page title={say("people.welcome")}>
        {error === null ? <p>{say("people.wholeLink")}</p> : null}
        <Problems error={error} />
        <p>
          <Link to="/">{say("people.toSignIn")}</Link>
        </p>
      </Page>
    );
  }
  if (data === undefined) return <Busy what={say("people.openingLink")} />;
  return <TakeLink link={link} meant={data} />;
}

function TakeLink({ link, meant }: { link: string; meant: LinkFor }) {
  const navigate = useNavigate();
  const [name, setName] = useState("");
  const [secret, setSecret] = useState("");
  const [isSet, setSet] = useState(false);
  const take = useEnter(async () => {
    const entered = await answerOf(server["sign-in"].link.$post({ json: { link, name, secret } }));
    window.history.replaceState(null, "", "/welcome");
    return entered.name !== null;
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    take.mutate(undefined, {
      onSuccess: (isIn) => (isIn ? void navigate({ to: "/" }) : setSet(true)),
    });
  };
  if (isSet) {
    return (
      <Page title={say("people.pinSet")} next={say("people.pinSetNext")}>
        <p>{say("people.notHere")}</p>
      </Page>
    );
  }
  const { kind } = meant;
  return (
    <Page
      title={
        meant.name === null ? say("people.welcomeOwner") : say("people.welcomeNamed", { name: meant.name })
      }
      next={meant.name === null ? say("people.welcomeOwnerNext") : say("people.choose", { kind })}
    >
      <form className="sign-in-form" onSubmit={submit}>
        {meant.name === null ? (
          <Field
            label={say("people.yourName")}
            hint={say("people.yourNameHint")}
            autoComplete="username"
            required
            maxLength={80}
            value={name}
            onChange={(event) => setName(event.target.value)}
          />
        ) : (
          <input type="hidden" name="username" autoComplete="username" value={meant.name} />
        )}
        <ChooseSecret kind={kind} value={secret} onChange={setSecret} />
        <Button kind="main" type="submit" disabled={take.isPending}>
          {take.isPending ? say("people.moment") : say("people.set", { kind })}
        </Button>
        <Problems error={take.error} />
      </form>
      <p className="soft sign-in-note">
        {say("people.asRole", { role: roleWord(meant.role), may: mayWords(meant.role) })}
      </p>
    </Page>
  );
}
