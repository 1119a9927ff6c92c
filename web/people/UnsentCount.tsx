import { useWaiting } from "../count/waiting.ts";
import { say } from "../texts/say.ts";

/** Entries of a count that wait on this device for somebody to sign in. */
export function UnsentCount() {
  const waiting = useWaiting().filter(({ refused }) => refused === null);
  const [first] = waiting;
  if (first === undefined) return null;
  return (
    <p className="unsent-count">{say("people.unsent", { count: waiting.length, name: first.row.count })}</p>
  );
}
