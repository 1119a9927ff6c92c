import "./problems.css";
import { lazyRouteComponent } from "@tanstack/react-router";
import { Suspense } from "react";
import { type Problem, ProblemError } from "../api.ts";
import { withTexts } from "../texts/load.ts";
import { say } from "../texts/say.ts";
import { Button } from "./Button.tsx";

/** Needed once in a bar's life, so that no other visit loads it. */
const YoungBook = lazyRouteComponent(() => withTexts(() => import("./YoungBook.tsx")), "YoungBook");

/** What a young book has not got yet, as the server names it in place of a field. */
const NEEDS = ["first-fact", "second-count", "more-sales"] as const;
export type Needs = (typeof NEEDS)[number];

type Props = { error: unknown; onRetry?: () => void };

/** What is wrong, each in its own sentence, announced when it appears. Draws nothing without an error. */
export function Problems({ error, onRetry }: Props) {
  if (error === null || error === undefined) return null;
  const problems = problemsOf(error);
  const [{ field = "", message = "" } = {}] = problems;
  const needs = NEEDS.find((need) => need === field);
  if (needs !== undefined) {
    return (
      <Suspense>
        <YoungBook needs={needs} message={message} />
      </Suspense>
    );
  }
  return (
    <div className="problems" role="alert" ref={bringIntoSight}>
      <p className="problems-head">{say("parts.didNotWork")}</p>
      <ul>
        {problems.map(({ field, message }) => (
          <li key={`${field} ${message}`}>{message}</li>
        ))}
      </ul>
      {onRetry === undefined ? null : <Button onClick={onRetry}>{say("parts.tryAgain")}</Button>}
    </div>
  );
}

/** An act's button stands at the foot of its form: what went wrong must not appear below the edge of the screen. */
function bringIntoSight(place: HTMLElement | null): void {
  place?.scrollIntoView({ block: "nearest" });
}

/** The problems of any error; one that is not a refusal is told as what it says. */
export function problemsOf(error: unknown): Problem[] {
  if (error instanceof ProblemError) return error.problems;
  return [{ field: "", message: error instanceof Error ? error.message : String(error) }];
}

/** The sentence for one field, for showing beside its input. */
export function problemOfField(error: unknown, field: string): string | undefined {
  if (!(error instanceof ProblemError)) return undefined;
  return error.problems.find((problem) => problem.field === field)?.message;
}
