import { useQuery } from "@tanstack/react-query";
import { useEffect, useId, useState } from "react";
import type { SpecLine } from "#engine/specs/spec.ts";
import type { SpecTextLine } from "#engine/specs/text/entry.ts";
import { say } from "../texts/say.ts";
import { Reading } from "./Reading.tsx";
import { readingQuery } from "./spec-queries.ts";

const PAUSE_MS = 250;

/** Spec text as it is read; `lines` are the spec's once all of it is understood, else null. */
export function useSpecText(text: string, also: readonly string[] = []) {
  const settled = useSettled(text, PAUSE_MS);
  const { data: read = [], error } = useQuery({
    ...readingQuery(settled, also),
    placeholderData: (previous) => previous,
    enabled: settled.trim() !== "",
  });
  const isRead = settled === text && text.trim() !== "" && read.length > 0;
  const isUnderstood = isRead && read.every(({ error: message }) => message === null);
  return { settled, read, error, lines: isUnderstood ? read.flatMap(specLineOf) : null };
}

type Props = Pick<ReturnType<typeof useSpecText>, "settled" | "read"> & {
  text: string;
  onText: (text: string) => void;
  label?: string;
  example?: string;
};

/** A field for spec text, and beside it how each line is understood. */
export function SpecText({ text, onText, settled, read, label, example }: Props) {
  const id = useId();
  return (
    <div className="edit-columns">
      <div className="field">
        <label htmlFor={id}>{label ?? say("specs.lineEach")}</label>
        <textarea
          id={id}
          value={text}
          rows={Math.max(6, text.split("\n").length + 1)}
          spellCheck={false}
          placeholder={example ?? say("specs.example")}
          onChange={(event) => onText(event.target.value)}
        />
      </div>
      <Reading text={settled} lines={settled.trim() === "" ? [] : read} fieldId={id} />
    </div>
  );
}

function specLineOf({
  line,
  amount,
  unit,
  item,
  orItems,
  note,
}: SpecTextLine): Omit<SpecLine, "makes" | "from">[] {
  return item === null || unit === null ? [] : [{ line, amount, unit, item, orItems, note: note ?? "" }];
}

/** The value once it has stood still for so long. */
export function useSettled<Value>(value: Value, pauseMs: number): Value {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), pauseMs);
    return () => clearTimeout(timer);
  }, [value, pauseMs]);
  return settled;
}
