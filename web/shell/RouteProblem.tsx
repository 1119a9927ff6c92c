import type { ErrorComponentProps } from "@tanstack/react-router";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { say } from "../texts/say.ts";

/** Shown when a screen itself fails or its code cannot be fetched; nothing entered is lost on the server. */
export function RouteProblem({ error }: ErrorComponentProps) {
  return (
    <Page title={say("shell.failed")} next={say("shell.failedNext")}>
      <Problems error={error} onRetry={() => window.location.reload()} />
    </Page>
  );
}
