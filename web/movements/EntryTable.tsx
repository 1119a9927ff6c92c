import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import type { Venue } from "#engine/venue.ts";
import { formatMoment } from "../format.ts";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { DataTable } from "../parts/DataTable.tsx";
import { Empty } from "../parts/Empty.tsx";
import { Select } from "../parts/Field.tsx";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { Problems } from "../parts/Problems.tsx";
import type { Column } from "../parts/table-column.ts";
import { useMay, useSignedIn } from "../people/signed-in.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { ChangeEntry } from "./ChangeEntry.tsx";
import { type AnyFact, type Entry, entriesQuery, type Kind, type Stamp } from "./entries.ts";
import { type FactWords, factWords } from "./fact-words.ts";

/** Days shown, with their name; a busy week alone fills a phone. */
const SPANS = [
  { value: "7", text: "movements.lastWeek" },
  { value: "28", text: "movements.lastFourWeeks" },
  { value: "100000", text: "movements.allTime" },
] as const;

type Asked = { entry: Entry<AnyFact>; way: "correct" | "withdraw" };

/** Id of the button that asks, to which the focus goes back. */
function buttonOf({ entry, way }: Asked): string {
  return `${way}-${entry.id}`;
}

/** The entries of a kind, newest first, each with what became of it. */
export function EntryTable({ kind }: { kind: Kind }) {
  const venue = useVenue();
  const [span, setSpan] = useState<string>(SPANS[0].value);
  const [asked, setAsked] = useState<Asked | null>(null);
  const seesCosts = useMay("seeCosts");
  const mayChange = useMayChange();
  const { data, error, refetch } = useQuery(entriesQuery(kind));
  if (error !== null) return <Problems error={error} onRetry={() => void refetch()} />;
  if (data === undefined) return <Busy what={say("movements.opening")} />;
  const all: Entry<AnyFact>[] = data;
  const newest = Date.parse(all[0]?.fact.at ?? "");
  const within = (days: string) =>
    all.filter(({ fact }) => newest - Date.parse(fact.at) < Number(days) * 86_400_000);
  const shown = within(span);
  const further = SPANS.find(({ value }) => within(value).length > shown.length);
  return (
    <section className="entries">
      {asked === null ? null : (
        <ChangeEntry
          key={`${asked.entry.id} ${asked.way}`}
          kind={kind}
          entry={asked.entry}
          way={asked.way}
          onClose={() => {
            setAsked(null);
            focusIfLost(buttonOf(asked));
          }}
        />
      )}
      <DataTable
        caption={say("movements.caption")}
        columns={columnsOf(kind, { venue, seesCosts, mayChange }, setAsked)}
        rows={shown}
        rowKey={({ id }) => String(id)}
        fileName={kind}
        filters={
          <Select
            label={say("movements.shown")}
            options={SPANS.map(({ value, text }) => ({ value, label: say(text) }))}
            value={span}
            onChange={(event) => setSpan(event.target.value)}
          />
        }
        empty={
          <Empty title={say("movements.nothingYet")}>
            <p>{say("movements.nothingYetNext")}</p>
          </Empty>
        }
      />
      {further === undefined ? null : (
        <Button
          className="entries-more"
          onClick={() => {
            setSpan(further.value);
            focusIfLost();
          }}
        >
          {say("movements.showMore", { span: say(further.text), count: within(further.value).length })}
        </Button>
      )}
    </section>
  );
}

const OWN_FOR_MS = 24 * 3_600_000;

/** Whether one may correct or take back an entry; without the power over the past, one's own of the last day. */
function useMayChange(): (entry: Entry<AnyFact>) => boolean {
  const changesPast = useMay("changePast");
  const me = useSignedIn();
  return ({ stamp }) =>
    changesPast || (stamp.enteredBy === me?.name && Date.now() - Date.parse(stamp.enteredAt) < OWN_FOR_MS);
}

function beforeWords({ what, amount }: FactWords, { reason }: Stamp): string {
  return say("movements.before", { reason, what, amount });
}

type Seen = { venue: Venue; seesCosts: boolean; mayChange: (entry: Entry<AnyFact>) => boolean };

function columnsOf(
  kind: Kind,
  { venue, seesCosts, mayChange }: Seen,
  onAsk: (asked: Asked) => void,
): Column<Entry<AnyFact>>[] {
  const words = (fact: AnyFact) => factWords(kind, fact, { currency: seesCosts ? venue.currency : null });
  return [
    {
      key: "what",
      head: say("movements.what"),
      kind: "text",
      onPhone: "lead",
      value: ({ fact }) => words(fact).what,
      show: ({ fact, history: [replaced], stamp }) => (
        <>
          {words(fact).what}
          {replaced === undefined ? null : (
            <span className="entry-before">{beforeWords(words(replaced.fact), stamp)}</span>
          )}
        </>
      ),
    },
    {
      key: "amount",
      head: say("movements.amount"),
      kind: "text",
      onPhone: "main",
      value: ({ fact }) => words(fact).amount,
    },
    { key: "about", head: say("movements.about"), kind: "text", value: ({ fact }) => words(fact).about },
    {
      key: "at",
      head: say("movements.when"),
      kind: "text",
      value: ({ fact }) => fact.at,
      show: ({ fact }) => formatMoment(fact.at, venue),
    },
    {
      key: "by",
      head: say("movements.by"),
      kind: "text",
      value: ({ fact, stamp }) => ("by" in fact ? fact.by : stamp.enteredBy),
    },
    {
      key: "acts",
      head: "",
      kind: "text",
      isDrawn: true,
      value: () => null,
      show: (entry) =>
        mayChange(entry) ? (
          <span className="entry-acts">
            <Button
              id={buttonOf({ entry, way: "correct" })}
              kind="quiet"
              aria-label={say("movements.correctOne", { what: words(entry.fact).what })}
              onClick={() => onAsk({ entry, way: "correct" })}
            >
              {say("movements.correct")}
            </Button>
            <Button
              id={buttonOf({ entry, way: "withdraw" })}
              kind="quiet"
              aria-label={say("movements.takeBackOne", { what: words(entry.fact).what })}
              onClick={() => onAsk({ entry, way: "withdraw" })}
            >
              {say("movements.takeBack")}
            </Button>
          </span>
        ) : null,
    },
  ];
}
