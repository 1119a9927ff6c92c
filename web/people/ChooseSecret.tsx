import { useState } from "react";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";

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
      ? { label: "New PIN", hint: "4 to 8 digits; no row of keys, no year." }
      : { label: "New password", hint: "At least 10 characters. Three words in a row are easy to keep." };
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
        {isShown ? "Hide it" : "Show it"}
      </Button>
    </>
  );
}
