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
import { ChooseSecret } from "./ChooseSecret.tsx";
import { ROLE_WORDS } from "./role-words.ts";
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
      <Page title="Welcome">
        {error === null ? <p>This page opens with the whole link, the part behind # too.</p> : null}
        <Problems error={error} />
        <p>
          <Link to="/">Go to the sign-in</Link>
        </p>
      </Page>
    );
  }
  if (data === undefined) return <Busy what="Opening the link" />;
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
      <Page title="Your PIN is set" next="Use it on one of the bar’s devices: tap your name, then the PIN.">
        <p>It does not count on this device, as nobody has enrolled it.</p>
      </Page>
    );
  }
  const word = meant.kind === "pin" ? "PIN" : "password";
  return (
    <Page
      title={meant.name === null ? "Welcome, owner" : `Welcome, ${meant.name}`}
      next={
        meant.name === null
          ? "Say your name and choose a password. You hold the keys from then on."
          : `Choose your ${word}.`
      }
    >
      <form className="sign-in-form" onSubmit={submit}>
        {meant.name === null ? (
          <Field
            label="Your name"
            hint="It stands beside what you enter."
            autoComplete="username"
            required
            maxLength={80}
            value={name}
            onChange={(event) => setName(event.target.value)}
          />
        ) : (
          <input type="hidden" name="username" autoComplete="username" value={meant.name} />
        )}
        <ChooseSecret kind={meant.kind} value={secret} onChange={setSecret} />
        <Button kind="main" type="submit" disabled={take.isPending}>
          {take.isPending ? "One moment …" : `Set the ${word}`}
        </Button>
        <Problems error={take.error} />
      </form>
      <p className="soft sign-in-note">
        As {meant.role}: {ROLE_WORDS[meant.role]}.
      </p>
    </Page>
  );
}
