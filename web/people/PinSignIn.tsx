import { useState } from "react";
import { answerOf, server } from "../api.ts";
import { Button } from "../parts/Button.tsx";
import { Problems } from "../parts/Problems.tsx";
import { say } from "../texts/say.ts";
import { PinPad } from "./PinPad.tsx";
import type { SignInState } from "./signed-in.ts";
import { useEnter } from "./use-enter.ts";

type Name = SignInState["names"][number];

/** Who you are, then your PIN: large enough for a thumb in the dark. */
export function PinSignIn({ names }: { names: readonly Name[] }) {
  const [person, setPerson] = useState<Name | null>(names.length === 1 ? (names[0] ?? null) : null);
  const [tries, setTries] = useState(0);
  const enter = useEnter((typed: { person: number; pin: string }) =>
    answerOf(server["sign-in"].pin.$post({ json: typed })),
  );
  if (person === null) {
    return (
      <ul className="pin-names">
        {names.map((name) => (
          <li key={name.id}>
            <Button className="pin-name" onClick={() => setPerson(name)}>
              {name.name}
            </Button>
          </li>
        ))}
      </ul>
    );
  }
  const attempt = (pin: string) =>
    enter.mutate({ person: person.id, pin }, { onError: () => setTries(tries + 1) });
  return (
    <section aria-label={say("people.pinOf", { name: person.name })}>
      <p className="pin-whose">{person.name}</p>
      <PinPad
        key={tries}
        label={say("people.pinOf", { name: person.name })}
        isBusy={enter.isPending}
        onPin={attempt}
      />
      <Problems error={enter.error} />
      {names.length > 1 ? (
        <Button
          kind="quiet"
          onClick={() => {
            enter.reset();
            setPerson(null);
          }}
        >
          {say("people.somebodyElse")}
        </Button>
      ) : null}
    </section>
  );
}
