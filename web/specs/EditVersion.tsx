import { useMutation, useQueryClient } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import { writeSpecText } from "#engine/specs/text/write.ts";
import { answerOf, server } from "../api.ts";
import { formatDate } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { language } from "../texts/language.ts";
import { say } from "../texts/say.ts";
import { SpecText, useSpecText } from "./SpecText.tsx";
import { dropDraft, keepDraft, keptDraft, type SpecDraft } from "./spec-draft.ts";
import { type Version, versionOn } from "./versions.ts";

type Props = { makes: string; versions: readonly Version[]; today: string; onDone: () => void };

/** A spec typed as text, read as one types; it is saved only when every line is understood. */
export function EditVersion({ makes, versions, today, onDone }: Props) {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const inForce: SpecDraft = { from: today, text: textOf(versionOn(versions, today) ?? versions[0]) };
  const [kept] = useState(() => keptDraft(makes));
  const [draft, setDraft] = useState(kept ?? inForce);
  const { from, text } = draft;
  const change = (part: Partial<SpecDraft>) => {
    const changed = { ...draft, ...part };
    keepDraft(makes, changed);
    setDraft(changed);
  };
  const { lines, error, ...reading } = useSpecText(text);
  const replaced = versions.some((version) => version.from === from);
  const save = useMutation({
    mutationFn: () => answerOf(server.specs.$post({ json: { makes, from, lines: lines ?? [] } })),
    onSuccess: async () => {
      dropDraft(makes);
      notify({ text: say("specs.versionSaved", { makes, date: formatDate(from) }) });
      onDone();
      await queryClient.invalidateQueries();
      focusIfLost();
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    save.mutate();
  };
  return (
    <form className="edit-version" onSubmit={submit}>
      {kept === undefined || draft.text === inForce.text ? null : (
        <p className="soft">
          {say("specs.draftKept")}{" "}
          {inForce.text === "" ? null : (
            <Button kind="quiet" onClick={() => change(inForce)}>
              {say("specs.draftDrop")}
            </Button>
          )}
        </p>
      )}
      <Field
        label={say("specs.holdsFrom")}
        type="date"
        required
        value={from}
        hint={fromHint({ from, today, replaced })}
        onChange={(event) => change({ from: event.target.value })}
      />
      <SpecText {...reading} text={text} onText={(typed) => change({ text: typed })} />
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
  const lines = version.lines.map((line) => ({ ...line, note: line.note === "" ? null : line.note }));
  return writeSpecText(lines, language);
}
