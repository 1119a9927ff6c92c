import { Link } from "@tanstack/react-router";
import { type KeyboardEvent, useEffect, useRef, useState } from "react";
import { instantOfInput, localInputOf } from "../moment.ts";
import { nowInstant } from "../now.ts";
import { Field } from "../parts/Field.tsx";
import { Page } from "../parts/Page.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { counter } from "./counter.ts";
import { foundWords } from "./found-words.ts";
import { type PaperLine, paperFound, paperLines, paperTyped } from "./paper.ts";
import type { Sheet } from "./sheet.ts";
import type { CountState } from "./use-count.ts";
import { WaitingLine } from "./WaitingLine.tsx";
import { enter } from "./waiting.ts";

/** A sheet from paper, typed by keyboard alone: a figure, Enter or Tab, the next line. */
export function PaperEntry({ count, sheet }: { count: CountState; sheet: Sheet }) {
  const venue = useVenue();
  const [at, setAt] = useState(() => localInputOf(nowInstant(), venue));
  const moment = instantOfInput(at, venue);
  const list = useRef<HTMLDivElement>(null);
  useEffect(() => list.current?.querySelector<HTMLInputElement>("input.paper-figure")?.focus(), []);
  const lines = paperLines(sheet, venue.show);
  const left = lines.filter((line) => paperTyped(line, count.rows) === "").length;
  return (
    <Page
      title={say("steps.fromPaper", { count: count.name })}
      next={say("steps.fromPaperNext")}
      actions={
        <Link to="/count" search={{ count: count.name }} className="button">
          {say("steps.toAreas")}
        </Link>
      }
    >
      <WaitingLine waiting={count.waiting} />
      <Field
        label={say("steps.countedAt")}
        type="datetime-local"
        value={at}
        error={moment === undefined ? say("steps.countedAtMissing") : undefined}
        onChange={(event) => setAt(event.target.value)}
      />
      <p className="soft" role="status">
        {say("steps.empty", { lines: left })}
      </p>
      <div ref={list}>
        {sheet.areas.map(({ area }) => (
          <section key={area}>
            <h2>{area}</h2>
            <ol className="paper-lines">
              {lines
                .filter((line) => line.area === area)
                .map((line) => (
                  <Line key={line.number} line={line} count={count} at={moment} />
                ))}
            </ol>
          </section>
        ))}
      </div>
    </Page>
  );
}

type LineProps = { line: PaperLine; count: CountState; at: string | undefined };

function Line({ line, count, at }: LineProps) {
  const held = paperTyped(line, count.rows);
  const [typed, setTyped] = useState(held);
  const [problem, setProblem] = useState<string | null>(null);
  const id = `paper-${line.number}`;
  const found = typed.trim() === "" ? null : paperFound(line, typed);
  const save = () => {
    if (typed === held) return;
    if (found === null) return setProblem(say("steps.takenBack"));
    if ("problem" in found) return setProblem(found.problem);
    if (at === undefined) return setProblem(say("steps.timeFirst"));
    const { area, item, pack } = { area: line.area, item: line.item.item, pack: line.pack };
    const seen = count.rows.find((row) => row.area === area && row.item === item && row.pack === pack);
    enter({ count: count.name, area, item, ...found, at, by: counter() }, seen?.id ?? null);
    setProblem(null);
  };
  return (
    <li>
      <label htmlFor={id}>
        {line.number}. {line.item.item}
        <span className="soft">
          , {line.pack ?? (line.unit === "each" ? say("count.pieces") : line.unit)}
        </span>
      </label>
      <input
        id={id}
        className="paper-figure"
        inputMode="decimal"
        autoComplete="off"
        value={typed}
        aria-invalid={problem !== null}
        aria-describedby={`${id}-read`}
        onChange={(event) => {
          setTyped(event.target.value);
          setProblem(null);
        }}
        onBlur={save}
        onKeyDown={goOnWithEnter}
      />
      <span id={`${id}-read`} className="paper-read">
        {problem === null ? (
          found !== null && !("problem" in found) ? (
            foundWords(found)
          ) : null
        ) : (
          <strong>{problem}</strong>
        )}
      </span>
    </li>
  );
}

/** Enter goes on as Tab does, past nothing but figures. */
function goOnWithEnter(event: KeyboardEvent<HTMLInputElement>): void {
  if (event.key !== "Enter") return;
  event.preventDefault();
  const figures = [...document.querySelectorAll<HTMLInputElement>("input.paper-figure")];
  const next = figures[figures.indexOf(event.currentTarget) + (event.shiftKey ? -1 : 1)];
  if (next === undefined) event.currentTarget.blur();
  else next.focus();
}
