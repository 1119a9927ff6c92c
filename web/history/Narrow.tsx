import { useNavigate } from "@tanstack/react-router";
import { type FormEvent, useState } from "react";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { say } from "../texts/say.ts";
import type { Wanted } from "./history-queries.ts";

/** Narrows the history to one thing and to days. */
export function Narrow({ wanted }: { wanted: Wanted }) {
  const navigate = useNavigate({ from: "/history" });
  const [subject, setSubject] = useState(wanted.subject ?? "");
  const [from, setFrom] = useState(wanted.from ?? "");
  const [to, setTo] = useState(wanted.to ?? "");
  const isNarrowed = [wanted.subject, wanted.from, wanted.to].some((value) => value !== undefined);
  const show = (event: FormEvent) => {
    event.preventDefault();
    const search = { subject: subject.trim() || undefined, from: from || undefined, to: to || undefined };
    void navigate({ search });
  };
  return (
    <form className="field-row history-narrow" onSubmit={show}>
      <Field
        label={say("history.about")}
        value={subject}
        placeholder={say("history.aboutHint")}
        className="history-about"
        onChange={(event) => setSubject(event.target.value)}
      />
      <Field
        label={say("history.from")}
        type="date"
        value={from}
        onChange={(event) => setFrom(event.target.value)}
      />
      <Field
        label={say("history.to")}
        type="date"
        value={to}
        onChange={(event) => setTo(event.target.value)}
      />
      <Button type="submit">{say("history.show")}</Button>
      {isNarrowed ? (
        <Button kind="quiet" onClick={() => void navigate({ search: {} })}>
          {say("parts.showAll")}
        </Button>
      ) : null}
    </form>
  );
}
