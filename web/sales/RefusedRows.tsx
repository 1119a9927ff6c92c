import type { RefusedRow } from "#engine/sales/read/line.ts";
import { formatNumber } from "../format.ts";
import { say } from "../texts/say.ts";

const SHOWN = 20;

/** Rows that were left out, by their number in the file, each with its reason. */
export function RefusedRows({ refused }: { refused: readonly RefusedRow[] }) {
  return (
    <ul className="refused-rows">
      {refused.slice(0, SHOWN).map(({ row, reason }) => (
        <li key={`${row} ${reason}`}>{say("sales.refusedRow", { row, reason })}</li>
      ))}
      {refused.length > SHOWN ? (
        <li>{say("sales.andMore", { count: formatNumber(refused.length - SHOWN) })}</li>
      ) : null}
    </ul>
  );
}
