import "./specs.css";
import { useQuery } from "@tanstack/react-query";
import { Link, useParams } from "@tanstack/react-router";
import { useState } from "react";
import type { CatalogueAnswer } from "../answers.ts";
import { shownWord } from "../book-words.ts";
import { formatDate, listWords } from "../format.ts";
import { ChangedBy } from "../history/ChangedBy.tsx";
import { todayAt } from "../moment.ts";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { Empty } from "../parts/Empty.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useMay } from "../people/signed-in.ts";
import { MakeOrBuy } from "../prep/MakeOrBuy.tsx";
import { catalogueQuery } from "../queries.ts";
import { useVenue } from "../shell/venue.tsx";
import { say, sayWith } from "../texts/say.ts";
import { DrinkFacts } from "./DrinkFacts.tsx";
import { EditVersion } from "./EditVersion.tsx";
import { PrepFacts } from "./PrepFacts.tsx";
import { SpecLines } from "./SpecLines.tsx";
import { allergensIn, usedBy, versionOn, versionsOf } from "./versions.ts";

/** One drink or prep: what goes in, since when, what it costs, and the way to change it from a day on. */
export function SpecPage() {
  const { name } = useParams({ from: "/specs/$name" });
  const { data: catalogue, error, refetch } = useQuery(catalogueQuery);
  if (catalogue !== undefined) return <Spec key={name} name={name} catalogue={catalogue} />;
  return (
    <Page title={name}>
      {error === null ? (
        <Busy what={say("specs.openingOne")} />
      ) : (
        <Problems error={error} onRetry={() => void refetch()} />
      )}
    </Page>
  );
}

function Spec({ name, catalogue }: { name: string; catalogue: CatalogueAnswer }) {
  const venue = useVenue();
  const [isEditing, setEditing] = useState(false);
  const runsBar = useMay("runBar");
  const seesCosts = useMay("seeCosts");
  const today = todayAt(venue);
  const drink = catalogue.drinks.find((one) => one.name === name);
  const item = catalogue.items.find((one) => one.name === name);
  const versions = versionsOf(catalogue.specs, name);
  const current = versionOn(versions, today);
  const cut = catalogue.cuts.find(({ gives }) => gives === name);
  if (drink === undefined && item === undefined) {
    return (
      <Page title={name}>
        <Empty title={say("specs.noneNamed")}>
          <Link to="/specs">{say("specs.allSpecs")}</Link>
        </Empty>
      </Page>
    );
  }
  return (
    <Page
      title={name}
      next={nextLine({ from: current?.from ?? versions[0]?.from, cutFrom: cut?.source })}
      actions={
        <>
          <Link to="/specs" className="button">
            {say("specs.allSpecs")}
          </Link>
          {drink === undefined ? (
            <Link to="/prep/$prep" params={{ prep: name }} className="button">
              {say("specs.batchCard")}
            </Link>
          ) : null}
          {runsBar ? (
            <Button kind="main" onClick={() => setEditing(!isEditing)}>
              {say(
                isEditing
                  ? "specs.closeEditor"
                  : versions.length === 0
                    ? "specs.writeSpec"
                    : "specs.newVersion",
              )}
            </Button>
          ) : null}
        </>
      }
    >
      {isEditing ? (
        <EditVersion makes={name} versions={versions} today={today} onDone={() => setEditing(false)} />
      ) : null}
      <div className="spec-columns">
        <div>
          <Versions versions={versions} current={current?.from} />
        </div>
        <div>
          {drink === undefined ? null : <DrinkFacts key={JSON.stringify(drink)} drink={drink} />}
          {item === undefined ? null : <PrepFacts item={item} catalogue={catalogue} today={today} />}
          <Allergens names={allergensIn(catalogue, name, today)} />
          <UsedBy names={usedBy(catalogue, name, today)} />
          {drink === undefined && item?.inHouse === true && seesCosts ? <MakeOrBuy prep={name} /> : null}
          <ChangedBy subject={name} />
        </div>
      </div>
    </Page>
  );
}

/** A juice or a peel may be nothing but a part of its fruit. */
function nextLine({ from, cutFrom }: { from: string | undefined; cutFrom: string | undefined }): string {
  if (from !== undefined) return say("specs.specFromDay", { date: formatDate(from) });
  return cutFrom === undefined ? say("specs.noSpecNext") : say("specs.cutNext", { source: cutFrom });
}

function Versions({
  versions,
  current,
}: {
  versions: ReturnType<typeof versionsOf>;
  current: string | undefined;
}) {
  return versions.map(({ from, lines }, place) => {
    const isCurrent = from === current;
    const until = versions[place - 1]?.from;
    const later = until === undefined ? say("specs.toCome") : say("specs.until", { date: formatDate(until) });
    return (
      <section key={from} className={isCurrent ? "version" : "version version-other"}>
        <h2>
          {sayWith("specs.versionFrom", {
            date: formatDate(from),
            state: <span className="soft">{isCurrent ? say("specs.inForce") : later}</span>,
          })}
        </h2>
        <SpecLines lines={lines} />
      </section>
    );
  });
}

function Allergens({ names }: { names: readonly string[] }) {
  return (
    <section className="spec-allergens">
      <h2>{say("specs.allergens")}</h2>
      <p>
        {names.length === 0 ? (
          say("specs.allergensNone")
        ) : (
          <strong>{listWords(names.map((name) => shownWord("allergen", name)))}.</strong>
        )}{" "}
        {say("specs.allergensCare")}
      </p>
    </section>
  );
}

function UsedBy({ names }: { names: readonly string[] }) {
  if (names.length === 0) return null;
  return (
    <section>
      <h2>{say("specs.goesInto")}</h2>
      <ul className="used-by">
        {names.map((name) => (
          <li key={name}>
            <Link to="/specs/$name" params={{ name }}>
              {name}
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}
