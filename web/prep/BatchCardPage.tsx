import "./prep.css";
import { useQuery } from "@tanstack/react-query";
import { Link, useParams, useSearch } from "@tanstack/react-router";
import { useDeferredValue, useState } from "react";
import { formatDate, listWords } from "../format.ts";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say, sayWith } from "../texts/say.ts";
import { Awake } from "./Awake.tsx";
import { benchAmount } from "./amounts.ts";
import { CardInputs } from "./CardInputs.tsx";
import { CardSteps } from "./CardSteps.tsx";
import type { CardSize } from "./card-size.ts";
import { HowMuch } from "./HowMuch.tsx";
import { MadeIt } from "./MadeIt.tsx";
import { otherCautions } from "./other-cautions.ts";
import { PrintLabels } from "./PrintLabels.tsx";
import { type BatchCard, cardQuery } from "./prep-queries.ts";
import { RunningTimers } from "./RunningTimers.tsx";
import { Timer } from "./Timer.tsx";
import { usePlanDay } from "./use-plan-day.ts";

/** One batch, to be read from an arm's length with both hands wet. */
export function BatchCardPage() {
  const { prep } = useParams({ from: "/prep/$prep" });
  const { date, make } = useSearch({ from: "/prep/$prep" });
  return <SizedCard key={`${prep} ${date} ${make}`} prep={prep} date={date} make={make} />;
}

type Props = { prep: string; date: string | undefined; make: number | undefined };

function SizedCard({ prep, date: asked, make }: Props) {
  const { date, error: dayError, refetch: askDay } = usePlanDay(asked);
  const [size, setSize] = useState<CardSize>({ way: "planned" });
  const wanted = useDeferredValue(size);
  const {
    data: card,
    error: cardError,
    refetch,
  } = useQuery({
    ...cardQuery({ prep, date, size: wanted, make }),
    enabled: date !== undefined,
    placeholderData: (previous) => previous,
  });
  const error = dayError ?? cardError;
  return (
    <Page
      title={card?.prep ?? prep}
      next={card === undefined ? undefined : <Standing card={card} />}
      actions={
        <>
          <Link to="/prep" search={{ date: card?.date ?? date }} className="button wet-key">
            {say("prep.backToList")}
          </Link>
          <Button className="wet-key" onClick={() => window.print()}>
            {say("prep.printCard")}
          </Button>
          {card === undefined ? null : <PrintLabels labels={card.labels} />}
        </>
      }
    >
      <RunningTimers />
      {card === undefined && error === null ? <Busy what={say("prep.writingCard")} /> : null}
      {card === undefined ? null : <HowMuch card={card} onSize={setSize} />}
      {error === null ? null : (
        <Problems error={error} onRetry={() => void (date === undefined ? askDay() : refetch())} />
      )}
      {card === undefined ? null : <Card card={card} />}
    </Page>
  );
}

function Standing({ card: { make, unit, date, useBy } }: { card: BatchCard }) {
  const venue = useVenue();
  const made = { amount: benchAmount(make, unit, venue), date: formatDate(date) };
  return useBy === null
    ? say("prep.standingNoLife", made)
    : say("prep.standing", { ...made, useBy: formatDate(useBy) });
}

function Card({ card }: { card: BatchCard }) {
  const { make, loads, steps, activeMinutes, standingHours, allergens } = card;
  // Which vessel's share is shown; null: the whole.
  const [vessel, setVessel] = useState<number | null>(null);
  const load = vessel === null ? undefined : loads[vessel];
  const cautions = otherCautions(card.cautions, allergens);
  return (
    <div className="card">
      <Awake />
      <Vessels card={card} vessel={load === undefined ? null : vessel} onVessel={setVessel} />
      <div className="card-columns">
        <CardInputs card={card} share={load === undefined ? 1 : load / make} />
        <CardSteps steps={steps} />
      </div>
      {cautions.length === 0 ? null : (
        <section className="card-cautions">
          <h2>{say("prep.mind")}</h2>
          <ul>
            {cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </section>
      )}
      <p className="card-allergens">
        {sayWith("prep.cardAllergens", {
          allergens: <strong>{say("prep.allergens")}</strong>,
          text: allergens.text,
        })}
      </p>
      <div className="no-print">
        <Timer prep={card.prep} minutes={activeMinutes} hours={standingHours} />
        <MadeIt key={card.prep} card={card} />
      </div>
    </div>
  );
}

type VesselsProps = { card: BatchCard; vessel: number | null; onVessel: (vessel: number | null) => void };

/** Where one vessel does not hold the batch: keys that show what goes into each. */
function Vessels({ card: { loads, unit }, vessel, onVessel }: VesselsProps) {
  const venue = useVenue();
  if (loads.length < 2) return null;
  return (
    <section className="card-loads" aria-label={say("prep.vessels")}>
      <p>{say("prep.tooSmall", { loads: listWords(loads.map((load) => benchAmount(load, unit, venue))) })}</p>
      <div className="wet-keys no-print">
        {[null, ...loads.keys()].map((key) => (
          <button
            key={key}
            type="button"
            className="button wet-key"
            aria-pressed={vessel === key}
            onClick={() => onVessel(key)}
          >
            {key === null
              ? say("prep.allTogether")
              : say("prep.vessel", { number: key + 1, amount: benchAmount(loads[key] ?? 0, unit, venue) })}
          </button>
        ))}
      </div>
    </section>
  );
}
