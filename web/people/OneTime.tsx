import { useEffect, useRef } from "react";
import { Button } from "../parts/Button.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { say } from "../texts/say.ts";

/** A secret that is shown this once: a link or a token, to be copied. */
export function OneTime({ title, text, more }: { title: string; text: string; more: string }) {
  const notify = useNotify();
  const field = useRef<HTMLInputElement>(null);
  // Copied by hand where the browser lets no page write to the clipboard.
  // biome-ignore lint/correctness/useExhaustiveDependencies: selected anew for each secret
  useEffect(() => field.current?.select(), [text]);
  const copy = async () => {
    await navigator.clipboard.writeText(text);
    notify({ text: say("people.copied") });
  };
  return (
    <div className="one-time">
      <label htmlFor="one-time-text">{title}</label>
      <div className="one-time-line">
        <input ref={field} id="one-time-text" readOnly value={text} />
        {"clipboard" in navigator ? <Button onClick={() => void copy()}>{say("parts.copy")}</Button> : null}
      </div>
      <p className="soft">{more}</p>
    </div>
  );
}
