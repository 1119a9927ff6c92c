import { say } from "../texts/say.ts";

/** Shown wherever a variance is. */
export function NoAccusation() {
  return (
    <p className="no-accusation">
      <strong>{say("variance.noAccusation")}</strong> {say("variance.noAccusationMore")}
    </p>
  );
}
