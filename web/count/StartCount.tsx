import { useQuery } from "@tanstack/react-query";
import { Link, useNavigate } from "@tanstack/react-router";
import { useState } from "react";
import { formatMoment, listWords } from "../format.ts";
import { todayAt } from "../moment.ts";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { Page } from "../parts/Page.tsx";
import { ownName } from "../people/own-name.ts";
import { useSignedIn } from "../people/signed-in.ts";
import { countsQuery } from "../queries.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { namesIn } from "./chosen.ts";
import { counter, saveCounter } from "./counter.ts";
import { useWaiting } from "./waiting.ts";

/** Begins a count, or goes on with one that was begun. */
export function StartCount({ items }: { items: string | undefined }) {
  const venue = useVenue();
  const navigate = useNavigate({ from: "/count" });
  const [name, setName] = useState(() =>
    say(items === undefined ? "count.newName" : "count.recountName", { date: todayAt(venue) }),
  );
  const me = useSignedIn();
  const [by, setBy] = useState(() => lastCounter(ownName(me)) || ownName(me));
  const countAs = () => {
    saveCounter(by);
    localStorage.setItem(FOR, ownName(me));
  };
  const begin = () => {
    countAs();
    void navigate({ search: { count: name.trim(), items } });
  };
  return (
    <Page
      title={say("shell.count")}
      next={
        items === undefined
          ? say("count.start")
          : say("count.startSpot", { items: listWords(namesIn(items)) })
      }
    >
      <form
        className="start-count"
        onSubmit={(event) => {
          event.preventDefault();
          if (name.trim() !== "") begin();
        }}
      >
        <Field
          label={say("count.name")}
          value={name}
          required
          onChange={(event) => setName(event.target.value)}
        />
        <Field
          label={say("count.countedBy")}
          hint={say("count.countedByHint")}
          value={by}
          autoComplete="nickname"
          onChange={(event) => setBy(event.target.value)}
        />
        <Button kind="main" type="submit" className="count-go">
          {say("count.begin")}
        </Button>
      </form>
      <EarlierCounts items={items} onGoOn={countAs} />
    </Page>
  );
}

const FOR = "ullage-counted-for";

/** Who counted last here under the same sign-in; on a phone that several use, the one before says nothing of the next. */
function lastCounter(me: string): string {
  return (localStorage.getItem(FOR) ?? me) === me ? counter() : "";
}

const SHOWN = 3;

function EarlierCounts({ items: chosen, onGoOn }: { items: string | undefined; onGoOn: () => void }) {
  const venue = useVenue();
  const { data: counts = [] } = useQuery(countsQuery);
  const onDevice = [...new Set(useWaiting().map(({ row }) => row.count))];
  const served = counts.slice(0, SHOWN);
  const unsent = onDevice.filter((name) => !served.some((count) => count.name === name));
  if (served.length + unsent.length === 0) return null;
  return (
    <section>
      <h2>{say("count.goOn")}</h2>
      <ul className="count-lines count-begun">
        {unsent.map((name) => (
          <li key={name}>
            <Link to="/count" search={{ count: name, items: chosen }} onClick={onGoOn}>
              <span>{name}</span>
              <span className="soft">{say("count.onDevice")}</span>
            </Link>
          </li>
        ))}
        {served.map(({ name, at, items }) => (
          <li key={name}>
            <Link to="/count" search={{ count: name, items: chosen }} onClick={onGoOn}>
              <span>{name}</span>
              <span className="soft">{say("count.begun", { at: formatMoment(at, venue), items })}</span>
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}
