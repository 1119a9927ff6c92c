import { queryOptions, useQuery } from "@tanstack/react-query";
import type { Power } from "#server/people/permissions.ts";
import { type Answer, answerOf, SIGNED_OUT, server } from "../api.ts";
import { keep, kept } from "../kept.ts";

export type SignInState = Answer<(typeof server)["sign-in"]["$get"]>;
export type SignedIn = NonNullable<SignInState["actor"]>;

const KEY = "ullage-signed-in";
const ASKED = "ullage-sign-in-asked";

/** Who is signed in; the last one seen on this device stands in while the network is away. */
export const signInQuery = queryOptions({
  queryKey: ["sign-in"],
  queryFn: async (): Promise<SignInState> => {
    const state = await answerOf(server["sign-in"].$get());
    keep(KEY, state);
    return state;
  },
  placeholderData: () => kept<SignInState>(KEY),
  retry: false,
  staleTime: 30_000,
});

/** What is known of the sign-in, and, while nothing is, what went wrong. */
export function useSignIn() {
  const { data, error, refetch } = useQuery(signInQuery);
  return { state: data ?? (error === null ? undefined : kept<SignInState>(KEY)), error, refetch };
}

/** Whoever is signed in; null before anybody is. */
export function useSignedIn(): SignedIn | null {
  return useSignIn().state?.actor ?? null;
}

/** Whether the one signed in has a power; the server holds to it whatever is drawn. */
export function useMay(power: Power): boolean {
  return useSignedIn()?.powers.includes(power) ?? false;
}

/** Puts the sign-in up over what goes on without it. */
export function askSignIn(): void {
  window.dispatchEvent(new Event(ASKED));
}

/** Listens for a session that is over and for a wish to sign in; gives the way to stop. */
export function onSignIn(heard: { over: () => void; asked: () => void }): () => void {
  window.addEventListener(SIGNED_OUT, heard.over);
  window.addEventListener(ASKED, heard.asked);
  return () => {
    window.removeEventListener(SIGNED_OUT, heard.over);
    window.removeEventListener(ASKED, heard.asked);
  };
}
