import type { SpecTextLine } from "#engine/specs/text/entry.ts";
import { say } from "../texts/say.ts";
import { AddItem } from "./AddItem.tsx";
import { eitherOf, measureWords } from "./line-words.ts";
import { markedWord } from "./marked-word.ts";

type Props = {
  text: string;
  lines: readonly SpecTextLine[];
  /** The field that the text is typed in. */
  fieldId: string;
};

/** How typed lines are understood, each beside its own number; what is not is said at the word. */
export function Reading({ text, lines, fieldId }: Props) {
  const typed = text.split(/\r\n|\r|\n/);
  const wrong = lines.filter(({ error }) => error !== null).length;
  return (
    <div className="reading">
      <p className="reading-head" role="status">
        {lines.length === 0
          ? say("specs.readHere")
          : wrong === 0
            ? say("specs.allUnderstood")
            : say("specs.notUnderstood", { wrong, count: lines.length })}
      </p>
      <ol>
        {lines.map((line) => (
          <li key={line.line} className={line.error === null ? "" : "reading-wrong"}>
            {line.error === null ? (
              <Understood line={line} />
            ) : (
              <Wrong line={line} typed={typed[line.line - 1] ?? ""} fieldId={fieldId} />
            )}
          </li>
        ))}
      </ol>
    </div>
  );
}

function Understood({ line }: { line: SpecTextLine }) {
  const { amount, unit, item, orItems, note } = line;
  return (
    <>
      <strong>{unit === null ? "" : measureWords({ amount, unit })}</strong>{" "}
      {eitherOf([item ?? "", ...orItems])}
      {note === null || note === "" ? null : <span className="soft">, {note}</span>}
    </>
  );
}

/** The line as typed, the word that is not known marked, and why. */
function Wrong({ line, typed, fieldId }: { line: SpecTextLine; typed: string; fieldId: string }) {
  const [start, end] = markedWord(typed, line);
  return (
    <>
      {typed.slice(0, start)}
      <mark>{typed.slice(start, end)}</mark>
      {typed.slice(end)}
      <span className="reading-why">{line.error}</span>
      <AddItem line={line} fieldId={fieldId} />
    </>
  );
}
