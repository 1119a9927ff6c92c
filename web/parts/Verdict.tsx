import "./verdict.css";
import type { Verdict as VerdictName } from "#engine/variance/verdict.ts";
import { say } from "../texts/say.ts";

/** The verdict of a variance in a word and a shape: full for chase, half for watch, empty for quiet. */
export function Verdict({ verdict }: { verdict: VerdictName }) {
  return (
    <span className={`verdict verdict-${verdict}`}>
      <svg viewBox="0 0 16 16" width="14" height="14" aria-hidden="true">
        <path className="verdict-fill" d={FILLS[verdict]} />
        <path className="verdict-edge" d="M8 1.5 14.5 8 8 14.5 1.5 8z" />
      </svg>
      {say(`parts.${verdict}`)}
    </span>
  );
}

const FILLS: Record<VerdictName, string> = {
  chase: "M8 1.5 14.5 8 8 14.5 1.5 8z",
  watch: "M1.5 8h13L8 14.5z",
  quiet: "",
};
