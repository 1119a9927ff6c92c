import type { SpecLine } from "#engine/specs/spec.ts";
import { say } from "../texts/say.ts";
import { eitherOf, measureWords } from "./line-words.ts";

/** The lines of a version, amounts in one column as on a spec card. */
export function SpecLines({ lines }: { lines: readonly SpecLine[] }) {
  return (
    <table className="spec-lines">
      <thead className="visually-hidden">
        <tr>
          <th scope="col">{say("specs.amount")}</th>
          <th scope="col">{say("specs.item")}</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.line}>
            <td>{measureWords(line)}</td>
            <td>
              {eitherOf([line.item, ...line.orItems])}
              {line.note === "" ? null : <span className="soft">, {line.note}</span>}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
