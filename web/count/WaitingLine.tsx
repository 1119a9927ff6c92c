import { plural } from "../format.ts";
import { isKept, send, type WaitingEntry } from "./waiting.ts";

/** Says, without alarm, what is still on this device only. */
export function WaitingLine({ waiting }: { waiting: readonly WaitingEntry[] }) {
  const refused = waiting.filter((entry) => entry.refused !== null).length;
  const toSend = waiting.length - refused;
  return (
    <p className="waiting-line" role="status">
      {toSend === 0 ? null : (
        <button type="button" onClick={() => void send()}>
          {toSend} waiting to send.{" "}
          {isKept() ? "Kept on this device." : "This device cannot keep them: leave this page open."} Send now
        </button>
      )}
      {refused === 0 ? null : <span>{plural(refused, "entry", "entries")} refused: see the list below.</span>}
    </p>
  );
}
