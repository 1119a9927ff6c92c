import "./specs.css";
import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import type { CatalogueAnswer } from "../answers.ts";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useMay } from "../people/signed-in.ts";
import { catalogueQuery } from "../queries.ts";
import { say } from "../texts/say.ts";
import { DrinksTable } from "./DrinksTable.tsx";
import { NewDrink } from "./NewDrink.tsx";
import { NewPrepForm } from "./NewPrepForm.tsx";
import { PrepsTable } from "./PrepsTable.tsx";
import { costQuery } from "./spec-queries.ts";

/** All drinks and preps: what they cost, what they bring, and from which day their spec holds. */
export function SpecsPage() {
  const { data: catalogue, error, refetch } = useQuery(catalogueQuery);
  const seesCosts = useMay("seeCosts");
  const runsBar = useMay("runBar");
  const { data: cost } = useQuery({ ...costQuery, enabled: seesCosts });
  const [isNew, setNew] = useState<"drink" | "prep" | null>(null);
  return (
    <Page
      title={say("specs.title")}
      next={catalogue === undefined ? undefined : nextLine(catalogue)}
      actions={
        runsBar ? (
          <>
            <Button onClick={() => setNew(isNew === "drink" ? null : "drink")}>
              {say(isNew === "drink" ? "parts.close" : "specs.newDrink")}
            </Button>
            <Button onClick={() => setNew(isNew === "prep" ? null : "prep")}>
              {say(isNew === "prep" ? "parts.close" : "specs.newPrep")}
            </Button>
          </>
        ) : undefined
      }
    >
      {isNew === "drink" ? <NewDrink /> : null}
      {isNew === "prep" && catalogue !== undefined ? <NewPrepForm catalogue={catalogue} /> : null}
      {catalogue === undefined && error === null ? <Busy what={say("specs.opening")} /> : null}
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {catalogue === undefined ? null : (
        <>
          <DrinksTable catalogue={catalogue} costs={cost?.drinks} />
          <PrepsTable
            catalogue={catalogue}
            costPerBase={new Map(cost?.items.map((row) => [row.item, row.costPerBase]))}
          />
        </>
      )}
    </Page>
  );
}

function nextLine({ drinks, specs }: CatalogueAnswer): string {
  const made = new Set(specs.map(({ makes }) => makes));
  const bare = drinks.filter(({ name }) => !made.has(name));
  const [first] = bare;
  return first === undefined
    ? say("specs.next")
    : say("specs.bare", { count: bare.length, first: first.name });
}
