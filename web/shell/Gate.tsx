import { useQuery, useQueryClient } from "@tanstack/react-query";
import { lazyRouteComponent, Outlet, useRouterState } from "@tanstack/react-router";
import { Suspense, useEffect, useState } from "react";
import { ProblemError } from "../api.ts";
import { Busy } from "../parts/Busy.tsx";
import { Problems } from "../parts/Problems.tsx";
import {
  askSignIn,
  onSignIn,
  type SignedIn,
  signInQuery,
  useSignedIn,
  useSignIn,
} from "../people/signed-in.ts";
import { lastSeenVenue, venueQuery } from "../queries.ts";
import { withTexts } from "../texts/load.ts";
import { say, sayWith } from "../texts/say.ts";
import { needOf } from "./nav.ts";
import { VenueProvider } from "./venue.tsx";

/** Needed once in a bar's life, or once a shift, so no other visit loads them. */
const FirstSteps = lazyRouteComponent(() => withTexts(() => import("./FirstSteps.tsx")), "FirstSteps");
const SignIn = lazyRouteComponent(() => withTexts(() => import("../people/SignIn.tsx")), "SignIn");
const NotYours = lazyRouteComponent(() => withTexts(() => import("../people/NotYours.tsx")), "NotYours");

/**
 * Lets whoever is signed in through to the screens. When a session ends meanwhile the screen stays as it is behind the
 * sign-in, and a count goes on in front of it: what is typed is not lost.
 */
export function Gate() {
  const queryClient = useQueryClient();
  const { state, error, refetch } = useSignIn();
  const path = useRouterState({ select: ({ location }) => location.pathname });
  const [isAsked, setAsked] = useState(false);
  const [opened, setOpened] = useState<string | null>(null);
  const name = state?.actor?.name ?? null;
  useEffect(
    () =>
      onSignIn({
        over: () => void queryClient.invalidateQueries({ queryKey: signInQuery.queryKey }),
        asked: () => setAsked(true),
      }),
    [queryClient],
  );
  useEffect(() => {
    if (name === null) return;
    setOpened(name);
    setAsked(false);
  }, [name]);
  if (path === "/welcome") return <Outlet />;
  if (state === undefined) {
    return error === null ? (
      <Busy what={say("shell.opening")} />
    ) : (
      <Problems error={error} onRetry={() => void refetch()} />
    );
  }
  const stands = name ?? opened;
  const isOut = name === null;
  const countsOn = isOut && stands !== null && path === "/count" && !isAsked;
  return (
    <>
      {countsOn ? <SignedOutLine /> : null}
      {isOut && !countsOn ? (
        <Suspense fallback={<Busy what={say("shell.door")} />}>
          <SignIn state={state} />
        </Suspense>
      ) : null}
      {stands === null ? null : (
        <div key={stands} hidden={isOut && !countsOn}>
          <VenueGate />
        </div>
      )}
    </>
  );
}

function SignedOutLine() {
  return (
    <p className="signed-out" role="status">
      {sayWith("shell.signedOut", {
        signIn: (
          <button type="button" onClick={askSignIn}>
            {say("shell.signInToSend")}
          </button>
        ),
      })}
    </p>
  );
}

function VenueGate() {
  const { data, error, refetch } = useQuery(venueQuery);
  // Of the screen that stands, which is the last one while the next is being fetched.
  const path = useRouterState({ select: ({ matches }) => matches.at(-1)?.pathname ?? "/" });
  const actor = useSignedIn();
  const isAway = error instanceof ProblemError && [0, 401].includes(error.status);
  const venue = data ?? (isAway ? lastSeenVenue() : undefined);
  if (venue !== undefined) {
    return <VenueProvider venue={venue}>{isYours(path, actor) ? <Outlet /> : <NotYours />}</VenueProvider>;
  }
  if (error instanceof ProblemError && [404, 422].includes(error.status)) return <FirstSteps />;
  if (error !== null) return <Problems error={error} onRetry={() => void refetch()} />;
  return <Busy what={say("shell.opening")} />;
}

/** An old address or a link that was handed on leads others to it. Behind the sign-in, where nobody is known, a screen stays as it is. */
function isYours(path: string, actor: SignedIn | null): boolean {
  const need = needOf(path);
  return actor === null || need === undefined || actor.powers.includes(need);
}
