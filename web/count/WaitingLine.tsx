import { askSignIn } from "../people/signed-in.ts";
import { say } from "../texts/say.ts";
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
          {say("count.toSend", { count: toSend })} {isKept() ? say("count.kept") : say("count.notKept")}{" "}
          {why === null ? say("count.sendNow") : why.status === 401 ? say("shell.signInToSend") : why.message}
        </button>
      )}
      {refused === 0 ? null : <span>{say("count.refused", { count: refused })}</span>}
    </p>
  );
}
