import type { ErrorComponentProps } from "@tanstack/react-router";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";

/** Shown when a screen itself fails or its code cannot be fetched; nothing entered is lost on the server. */
export function RouteProblem({ error }: ErrorComponentProps) {
  return (
    <Page title="This screen failed" next="What was saved is safe. Load the page again.">
      <Problems error={error} onRetry={() => window.location.reload()} />
    </Page>
  );
}
