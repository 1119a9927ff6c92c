import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { type FormEvent, useEffect, useId, useState } from "react";
import type { SpecTextLine } from "#engine/specs/text/entry.ts";
import { writeSpecText } from "#engine/specs/text/write.ts";
import { answerOf, server } from "../api.ts";
import { formatDate } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { Reading } from "./Reading.tsx";
import { readingQuery } from "./spec-queries.ts";
import { type Version, versionOn } from "./versions.ts";

type Props = { makes: string; versions: readonly Version[]; today: string; onDone: () => void };

const PAUSE_MS = 250;

/** A spec typed as text, read as one types; it is saved only when every line is understood. */
export function EditVersion({ makes, versions, today, onDone }: Props) {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const textId = useId();
  const [from, setFrom] = useState(today);
  const [text, setText] = useState(() => textOf(versionOn(versions, today) ?? versions[0]));
  const settled = useSettled(text, PAUSE_MS);
  const { data: lines = [], error } = useQuery({
    ...readingQuery(settled),
    placeholderData: (previous) => previous,
    enabled: settled.trim() !== "",
  });
  const isRead = settled === text && text.trim() !== "" && lines.length > 0;
  const wrong = lines.filter(({ error: message }) => message !== null).length;
  const replaced = versions.some((version) => version.from === from);
  const save = useMutation({
    mutationFn: () =>
      answerOf(server.specs.$post({ json: { makes, from, lines: lines.flatMap(specLineOf) } })),
    onSuccess: async () => {
      notify({ text: `${makes}: the spec from ${formatDate(from)} is saved.` });
      onDone();
      await queryClient.invalidateQueries();
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    save.mutate();
  };
  return (
    <form className="edit-version" onSubmit={submit}>
      <Field
        label="Holds from"
        type="date"
        required
        value={from}
        hint={fromHint({ from, today, replaced })}
        onChange={(event) => setFrom(event.target.value)}
      />
      <div className="edit-columns">
        <div className="field">
          <label htmlFor={textId}>One line an ingredient, as on a spec card</label>
          <textarea
            id={textId}
            value={text}
            rows={Math.max(6, text.split("\n").length + 1)}
            spellCheck={false}
            placeholder={"2 oz dry gin\n3/4 oz lime juice\n1 lime wheel\ntop soda water"}
            onChange={(event) => setText(event.target.value)}
          />
        </div>
        <Reading text={settled} lines={settled.trim() === "" ? [] : lines} />
      </div>
      <Problems error={error ?? save.error} />
      <Button kind="main" type="submit" disabled={!isRead || wrong > 0 || from === "" || save.isPending}>
        {replaced ? "Replace the version of that day" : "Save the new version"}
      </Button>
    </form>
  );
}

function fromHint({ from, today, replaced }: { from: string; today: string; replaced: boolean }): string {
  const past = from < today ? "Expected use of sales since that day is reckoned anew with it." : "";
  return [replaced ? "There is a version from that day; it is replaced." : "", past]
    .filter(Boolean)
    .join(" ");
}

function textOf(version: Version | undefined): string {
  if (version === undefined) return "";
  return writeSpecText(version.lines.map((line) => ({ ...line, note: line.note === "" ? null : line.note })));
}

function specLineOf({ line, amount, unit, item, orItems, note }: SpecTextLine) {
  return item === null || unit === null ? [] : [{ line, amount, unit, item, orItems, note: note ?? "" }];
}

/** The value once it has stood still for so long. */
function useSettled(value: string, pauseMs: number): string {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), pauseMs);
    return () => clearTimeout(timer);
  }, [value, pauseMs]);
  return settled;
}
