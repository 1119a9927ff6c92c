import { type FormEvent, useState } from "react";
import { answerOf, server } from "../api.ts";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useFocusFirst } from "../parts/use-focus-first.ts";
import { say } from "../texts/say.ts";
import { useEnter } from "./use-enter.ts";

/** Name and password; the browser's own password keeper knows the fields. */
export function PasswordForm() {
  const [name, setName] = useState("");
  const [password, setPassword] = useState("");
  const place = useFocusFirst<HTMLFormElement>();
  const enter = useEnter(() => answerOf(server["sign-in"].password.$post({ json: { name, password } })));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    enter.mutate(undefined);
  };
  return (
    <form ref={place} className="sign-in-form" onSubmit={submit}>
      <Field
        label={say("people.name")}
        autoComplete="username"
        required
        value={name}
        onChange={(event) => setName(event.target.value)}
      />
      <Field
        label={say("people.password")}
        type="password"
        autoComplete="current-password"
        required
        value={password}
        onChange={(event) => setPassword(event.target.value)}
      />
      <Button kind="main" type="submit" disabled={enter.isPending}>
        {enter.isPending ? say("people.moment") : say("people.signIn")}
      </Button>
      <Problems error={enter.error} />
    </form>
  );
}
