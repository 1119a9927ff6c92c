import { useMutation, useQueryClient } from "@tanstack/react-query";
import { send } from "../count/waiting.ts";

/** What a one-time link is for is asked under this key. */
export const LINK_KEY = "sign-in-link";

/** An attempt to sign in: when it succeeds, all screens ask anew and what waits on this device is sent. */
export function useEnter<Typed, Entered>(attempt: (typed: Typed) => Promise<Entered>) {
  const queryClient = useQueryClient();
  return useMutation({
    mutationFn: attempt,
    onSuccess: async () => {
      // A link that has just been used up is not looked at again.
      await queryClient.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== LINK_KEY });
      void send();
    },
  });
}
