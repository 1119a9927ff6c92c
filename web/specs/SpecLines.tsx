import type { SpecLine } from "#engine/specs/spec.ts";
import { measureWords } from "./line-words.ts";

/** The lines of a version, amounts in one column as on a spec card. */
export function SpecLines({ lines }: { lines: readonly SpecLine[] }) {
  return (
    <table className="spec-lines">
      <thead className="visually-hidden">
        <tr>
          <th scope="col">Amount</th>
          <th scope="col">Item</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.line}>
            <td>{measureWords(line)}</td>
            <td>
              {[line.item, ...line.orItems].join(" or ")}
              {line.note === "" ? null : <span className="soft">, {line.note}</span>}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
