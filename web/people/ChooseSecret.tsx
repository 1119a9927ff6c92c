import { useState } from "react";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { say } from "../texts/say.ts";

type Props = {
  kind: "password" | "pin";
  value: string;
  onChange: (value: string) => void;
};

/** A new password, which can be looked at while it is typed, or a new PIN. */
export function ChooseSecret({ kind, value, onChange }: Props) {
  const [isShown, setShown] = useState(false);
  const words =
    kind === "pin"
      ? { label: say("people.newPin"), hint: say("people.newPinHint") }
      : { label: say("people.newPassword"), hint: say("people.newPasswordHint") };
  return (
    <>
      <Field
        {...words}
        type={isShown ? "text" : "password"}
        inputMode={kind === "pin" ? "numeric" : "text"}
        autoComplete="new-password"
        required
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
      <Button kind="quiet" aria-pressed={isShown} onClick={() => setShown(!isShown)}>
        {isShown ? say("people.hide") : say("people.show")}
      </Button>
    </>
  );
}
