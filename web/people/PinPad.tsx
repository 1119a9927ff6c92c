import { Delete } from "lucide-react";
import { type FormEvent, useEffect, useRef, useState } from "react";
import { say } from "../texts/say.ts";

const DIGITS = ["1", "2", "3", "4", "5", "6", "7", "8", "9"] as const;
const LONGEST = 8;
const SHORTEST = 4;

type Props = { label: string; isBusy: boolean; onPin: (pin: string) => void };

/** Twelve large keys; a keyboard types into the field above them. */
export function PinPad({ label, isBusy, onPin }: Props) {
  const [pin, setPin] = useState("");
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus({ preventScroll: true }), []);
  const add = (digit: string) => setPin((typed) => (typed + digit).slice(0, LONGEST));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (pin.length >= SHORTEST && !isBusy) onPin(pin);
  };
  return (
    <form className="pin-pad" onSubmit={submit}>
      <input
        ref={field}
        className="pin-typed"
        type="password"
        // The keys below are the keyboard; the device's own would cover them.
        inputMode="none"
        autoComplete="off"
        aria-label={label}
        value={pin}
        onChange={(event) => setPin(event.target.value.replace(/\D/g, "").slice(0, LONGEST))}
      />
      {DIGITS.map((digit) => (
        <button key={digit} type="button" onClick={() => add(digit)}>
          {digit}
        </button>
      ))}
      <button type="button" aria-label={say("people.eraseDigit")} onClick={() => setPin(pin.slice(0, -1))}>
        <Delete aria-hidden="true" size={26} strokeWidth={1.6} />
      </button>
      <button type="button" onClick={() => add("0")}>
        0
      </button>
      <button type="submit" className="pin-go" disabled={pin.length < SHORTEST || isBusy}>
        {say("people.ok")}
      </button>
    </form>
  );
}
