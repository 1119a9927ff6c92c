import { plural } from "../format.ts";
import { askSignIn } from "../people/signed-in.ts";
import { isKept, send, type WaitingEntry, whyNotSent } from "./waiting.ts";

/** Says, without alarm, what is still on this device only. */
export function WaitingLine({ waiting }: { waiting: readonly WaitingEntry[] }) {
  const refused = waiting.filter((entry) => entry.refused !== null).length;
  const toSend = waiting.length - refused;
  const why = whyNotSent();
  return (
    <p className="waiting-line" role="status">
      {toSend === 0 ? null : (
        <button type="button" onClick={why?.status === 401 ? askSignIn : () => void send()}>
          {toSend} waiting to send.{" "}
          {isKept() ? "Kept on this device." : "This device cannot keep them: leave this page open."}{" "}
          {why === null ? "Send now" : why.status === 401 ? "Sign in to send" : why.message}
        </button>
      )}
      {refused === 0 ? null : <span>{plural(refused, "entry", "entries")} refused: see the list below.</span>}
    </p>
  );
}
