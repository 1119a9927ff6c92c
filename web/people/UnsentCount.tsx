import { useWaiting } from "../count/waiting.ts";
import { plural } from "../format.ts";

/** Entries of a count that wait on this device for somebody to sign in. */
export function UnsentCount() {
  const waiting = useWaiting().filter(({ refused }) => refused === null);
  if (waiting.length === 0) return null;
  const [first] = waiting;
  return (
    <p className="unsent-count">
      {plural(waiting.length, "entry", "entries")} of {first?.row.count} {waiting.length === 1 ? "is" : "are"}{" "}
      kept on this device. Sign in to send {waiting.length === 1 ? "it" : "them"}.
    </p>
  );
}
