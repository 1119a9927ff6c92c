import { useMutation, useQueryClient } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import { writeSpecText } from "#engine/specs/text/write.ts";
import { answerOf, server } from "../api.ts";
import { formatDate } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { say } from "../texts/say.ts";
import { SpecText, useSpecText } from "./SpecText.tsx";
import { type Version, versionOn } from "./versions.ts";

type Props = { makes: string; versions: readonly Version[]; today: string; onDone: () => void };

/** A spec typed as text, read as one types; it is saved only when every line is understood. */
export function EditVersion({ makes, versions, today, onDone }: Props) {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const [from, setFrom] = useState(today);
  const [text, setText] = useState(() => textOf(versionOn(versions, today) ?? versions[0]));
  const { lines, error, ...reading } = useSpecText(text);
  const replaced = versions.some((version) => version.from === from);
  const save = useMutation({
    mutationFn: () => answerOf(server.specs.$post({ json: { makes, from, lines: lines ?? [] } })),
    onSuccess: async () => {
      notify({ text: say("specs.versionSaved", { makes, date: formatDate(from) }) });
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
        label={say("specs.holdsFrom")}
        type="date"
        required
        value={from}
        hint={fromHint({ from, today, replaced })}
        onChange={(event) => setFrom(event.target.value)}
      />
      <SpecText {...reading} text={text} onText={setText} />
      <Problems error={error ?? save.error} />
      <Button kind="main" type="submit" disabled={lines === null || from === "" || save.isPending}>
        {say(replaced ? "specs.replaceVersion" : "specs.saveVersion")}
      </Button>
    </form>
  );
}

function fromHint({ from, today, replaced }: { from: string; today: string; replaced: boolean }): string {
  const past = from < today ? say("specs.reckonedAnew") : "";
  return [replaced ? say("specs.replaces") : "", past].filter(Boolean).join(" ");
}

function textOf(version: Version | undefined): string {
  if (version === undefined) return "";
  return writeSpecText(version.lines.map((line) => ({ ...line, note: line.note === "" ? null : line.note })));
}
