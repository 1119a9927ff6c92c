import "./movements.css";
import { useQuery } from "@tanstack/react-query";
import { Link, useSearch } from "@tanstack/react-router";
import { useState } from "react";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useMay } from "../people/signed-in.ts";
import { catalogueQuery } from "../queries.ts";
import { say } from "../texts/say.ts";
import { EnterFacts } from "./EnterFacts.tsx";
import { EntryTable } from "./EntryTable.tsx";
import type { Kind } from "./entries.ts";
import { Withdrawn } from "./Withdrawn.tsx";

const KINDS = [
  { kind: "deliveries", label: "movements.deliveries" },
  { kind: "losses", label: "movements.losses" },
  { kind: "transfers", label: "movements.transfers" },
  { kind: "batches", label: "movements.batches" },
] as const;

const ENTER = {
  deliveries: "movements.enterDelivery",
  losses: "movements.enterLoss",
  transfers: "movements.enterTransfer",
  batches: "movements.enterBatch",
} as const;

const ENTER_BUTTON = "enter-fact";

/** Stock that came or went without a sale: entered, listed, corrected, taken back, never erased. */
export function MovementsPage() {
  const { kind = "deliveries" } = useSearch({ from: "/movements" });
  const { data: catalogue, error, refetch } = useQuery(catalogueQuery);
  return (
    <Page title={say("movements.title")} next={say("movements.next")}>
      <nav aria-label={say("movements.kinds")} className="kinds">
        {KINDS.map((one) => (
          <Link
            key={one.kind}
            to="/movements"
            search={{ kind: one.kind }}
            className={one.kind === kind ? "kind-on" : ""}
            aria-current={one.kind === kind ? "page" : undefined}
          >
            {say(one.label)}
          </Link>
        ))}
      </nav>
      {catalogue === undefined && error === null ? <Busy what={say("shell.opening")} /> : null}
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {catalogue === undefined ? null : <OneKind key={kind} kind={kind} />}
    </Page>
  );
}

function OneKind({ kind }: { kind: Kind }) {
  const [isOpen, setOpen] = useState(false);
  const counts = useMay("count");
  // Goods that come in or go out are taken by whoever counts.
  const mayEnter = counts || kind === "losses" || kind === "batches";
  return (
    <>
      {!mayEnter ? null : isOpen ? (
        <EnterFacts
          kind={kind}
          onClose={() => {
            setOpen(false);
            focusIfLost(ENTER_BUTTON);
          }}
        />
      ) : (
        <Button id={ENTER_BUTTON} kind="main" onClick={() => setOpen(true)}>
          {say(ENTER[kind])}
        </Button>
      )}
      <EntryTable kind={kind} />
      <Withdrawn kind={kind} />
    </>
  );
}
