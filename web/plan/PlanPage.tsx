import "./plan.css";
import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import type { Change } from "#engine/demand/changed-book.ts";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { catalogueQuery, weekQuery } from "../queries.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { ChangeForm } from "./ChangeForm.tsx";
import { changeWords } from "./change-words.ts";
import { whatIfQuery } from "./plan-queries.ts";
import { StockAgainstRisk } from "./StockAgainstRisk.tsx";
import { WhatIfResult } from "./WhatIfResult.tsx";

const DAYS = 14;

/** What would change with a party, a closed day, a price or another menu, and what safety costs. */
export function PlanPage() {
  const [changes, setChanges] = useState<readonly Change[]>([]);
  const { data: catalogue } = useQuery(catalogueQuery);
  const { data: week } = useQuery(weekQuery);
  return (
    <Page title={say("plan.title")} next={say("plan.next")}>
      {catalogue === undefined || week === undefined ? null : (
        <ChangeForm
          drinks={catalogue.drinks.map(({ name }) => name)}
          from={week.now.businessDate}
          onAdd={(change) => setChanges([...changes, change])}
        />
      )}
      <Changes changes={changes} onChange={setChanges} />
      <Result changes={changes} />
      <StockAgainstRisk />
    </Page>
  );
}

function Changes({
  changes,
  onChange,
}: {
  changes: readonly Change[];
  onChange: (changes: readonly Change[]) => void;
}) {
  const { currency } = useVenue();
  if (changes.length === 0) return null;
  return (
    <ul className="changes">
      {changes.map((change) => {
        const words = changeWords(change, currency);
        return (
          <li key={words}>
            {words}
            <Button
              kind="quiet"
              aria-label={say("plan.takeOutThis", { change: words })}
              onClick={() => onChange(changes.filter((other) => other !== change))}
            >
              {say("plan.takeOut")}
            </Button>
          </li>
        );
      })}
    </ul>
  );
}

function Result({ changes }: { changes: readonly Change[] }) {
  const { data, error, isFetching, isPlaceholderData, refetch } = useQuery(whatIfQuery(changes, DAYS));
  if (changes.length === 0) return null;
  if (error !== null) return <Problems error={error} onRetry={() => void refetch()} />;
  if (data === undefined) return isFetching ? <Busy what={say("plan.reckoning")} /> : null;
  return (
    <div className={isPlaceholderData ? "what-if-before" : undefined} aria-busy={isPlaceholderData}>
      {isPlaceholderData ? <Busy what={say("plan.reckoning")} /> : null}
      <WhatIfResult answer={data} />
    </div>
  );
}
