import "./problems.css";
import { type Problem, ProblemError } from "../api.ts";
import { say } from "../texts/say.ts";
import { Button } from "./Button.tsx";

type Props = { error: unknown; onRetry?: () => void };

/** What is wrong, each in its own sentence, announced when it appears. Draws nothing without an error. */
export function Problems({ error, onRetry }: Props) {
  if (error === null || error === undefined) return null;
  return (
    <div className="problems" role="alert">
      <p className="problems-head">{say("parts.didNotWork")}</p>
      <ul>
        {problemsOf(error).map(({ field, message }) => (
          <li key={`${field} ${message}`}>{message}</li>
        ))}
      </ul>
      {onRetry === undefined ? null : <Button onClick={onRetry}>{say("parts.tryAgain")}</Button>}
    </div>
  );
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
